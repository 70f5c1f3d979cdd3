import { localeWriting } from '../locale.ts';

const { timeOf } = localeWriting('en-GB');

/** What was written and not sent yet. */
export const drafts = {
  restored: (atMs: number, nowMs: number): string => `Draft from ${timeOf(atMs, nowMs)} restored.`,
  discard: 'Discard draft',
};
