/** The form for a session's note and pain. */
export const sessionNotes = {
  title: 'Note and pain',
  painBefore: 'Pain before',
  painAfter: 'Pain after',
  notAsked: 'not asked',
  note: 'Note',
  keep: 'Keep',
  kept: 'Kept.',
  failed: 'The service did not answer. What you typed is still here.',
};
