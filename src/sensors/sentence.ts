/** Sentences of one kind by their key; `{name}` in one stands for a value. */
export type SentenceBook<Key extends string = string> = Readonly<Record<Key, string>>;

/** A sentence with its values in place. */
export const fill = (
  sentence: string,
  values: Readonly<Record<string, string | number>> = {},
): string => sentence.replace(/\{(\w+)\}/g, (whole, name: string) => String(values[name] ?? whole));

/** Which sentence of a book a text is, and with which values. */
export interface Recognised<Key extends string> {
  readonly key: Key;
  readonly values: Readonly<Record<string, string>>;
}

/** A text as it stands in a pattern, with the `u` flag too. */
export const escaped = (text: string): string => text.replace(/[.*+?^${}()|[\]\\]/g, '\\$&');

const pattern = (sentence: string): RegExp =>
  new RegExp(
    `^${sentence
      .split(/(\{\w+\})/)
      .map((part) => (/^\{\w+\}$/.test(part) ? `(?<${part.slice(1, -1)}>.*?)` : escaped(part)))
      .join('')}$`,
    's',
  );

/** Undoes `fill`: a text that came as a sentence, for instance from an older recording; `null` for an unknown one. */
export function recognise<Key extends string>(
  book: SentenceBook<Key>,
  text: string,
): Recognised<Key> | null {
  for (const key of Object.keys(book) as Key[]) {
    const found = pattern(book[key]).exec(text);
    if (found !== null) return { key, values: { ...found.groups } };
  }
  return null;
}
