import { type HelpTopics, textOf } from './topic.ts';

/** Lower case without accents, so that "ubung" finds "Übung". */
const folded = (text: string): string =>
  text
    .normalize('NFD')
    .replace(/\p{Diacritic}/gu, '')
    .toLowerCase()
    .replaceAll('ß', 'ss');

/** Names of the topics that hold every word of `query`, those with all of them in the title first. */
export function findTopics(topics: HelpTopics, query: string): readonly string[] {
  const words = folded(query).split(/\s+/).filter(Boolean);
  const hasAll = (text: string): boolean => words.every((word) => folded(text).includes(word));
  const found = Object.entries(topics).filter(([, topic]) => hasAll(textOf(topic)));
  const inTitle = found.filter(([, { title }]) => hasAll(title));
  const elsewhere = found.filter(([, { title }]) => !hasAll(title));
  return [...inTitle, ...elsewhere].map(([name]) => name);
}
