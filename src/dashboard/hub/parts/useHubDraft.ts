import { browserDrafts } from '../../drafts/drafts.ts';
import { type DraftState, readText, useDraft } from '../../drafts/useDraft.ts';
import { useHub } from '../shell/hub.ts';

/** A text that the person who is signed in is writing. */
export function useHubDraft(about: string): DraftState<string> {
  const { me } = useHub();
  return useDraft(browserDrafts(me.id), about, '', readText);
}

/** Whether such a text was begun. */
export function useIsBegun(about: string): boolean {
  const { me } = useHub();
  return browserDrafts(me.id).read(about) !== null;
}
