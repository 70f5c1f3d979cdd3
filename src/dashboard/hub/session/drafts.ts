/** What was written and not sent yet, by what it is about; it lives as long as the page. */
const drafts = new Map<string, string>();

export const draftOf = (about: string): string => drafts.get(about) ?? '';

export function keepDraft(about: string, text: string): void {
  if (text === '') drafts.delete(about);
  else drafts.set(about, text);
}
