import { browserDrafts } from './drafts.ts';
import { type DraftState, readText, useDraft } from './useDraft.ts';

/** Nobody signs in at the student's own service: one account. */
export const ownDrafts = () => browserDrafts('here');

/** A text that the student is writing. */
export const useOwnDraft = (about: string, beginning = ''): DraftState<string> =>
  useDraft(ownDrafts(), about, beginning, readText);
