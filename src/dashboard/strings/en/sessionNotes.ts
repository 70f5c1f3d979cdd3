/** The form for a session's note and pain. */
export const sessionNotes = {
  title: 'Note and pain',
  painBefore: 'Pain before',
  painAfter: 'Pain after',
  notAsked: 'not asked',
  note: 'Note',
  keep: 'Save',
  kept: 'Saved.',
  failed: 'Not saved: no answer from Stillcatch. Your text is still here.',
};
