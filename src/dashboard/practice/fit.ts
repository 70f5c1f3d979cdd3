/** Characters of the widest line when the words are laid out in at most two lines. */
export function widestOfTwo(text: string): number {
  const words = text.split(' ');
  const widths = words.map((_, i) =>
    Math.max(words.slice(0, i).join(' ').length, words.slice(i).join(' ').length),
  );
  return Math.min(...widths);
}

/** What a style sheet needs to make words as large as their place allows, in one line or in two. */
export const fitVars = (text: string): Record<string, string> => ({
  '--one': String(Math.max(1, text.length)),
  '--two': String(Math.max(1, widestOfTwo(text))),
});
