import { type SentenceBook, fill, recognise } from '../../sensors/sentence.ts';

/**
 * A sentence of the core in another language, its values with it; one that stands in no book stays as it came.
 * @param word how a value is said
 */
export function translate<Key extends string>(
  english: SentenceBook<Key>,
  other: SentenceBook<Key>,
  text: string,
  word: (value: string) => string = (value) => value,
): string {
  const found = recognise(english, text);
  if (found === null) return text;
  const values = Object.entries(found.values).map(([name, value]) => [name, word(value)] as const);
  return fill(other[found.key], Object.fromEntries(values));
}
