/** A part of a help topic: a paragraph, steps in order, points without order, or words with their meaning. */
export type HelpBlock =
  | string
  | { readonly steps: readonly string[] }
  | { readonly points: readonly string[] }
  | { readonly terms: readonly (readonly [term: string, meaning: string])[] };

export interface HelpTopic {
  readonly title: string;
  readonly body: readonly HelpBlock[];
}

/** The topics of a help page by their name, in the order in which they are shown. */
export type HelpTopics = Readonly<Record<string, HelpTopic>>;

function textsOf(block: HelpBlock): readonly string[] {
  if (typeof block === 'string') return [block];
  if ('steps' in block) return block.steps;
  if ('points' in block) return block.points;
  return block.terms.flat();
}

/** All that a topic says, for search. */
export const textOf = ({ title, body }: HelpTopic): string =>
  [title, ...body.flatMap(textsOf)].join('\n');
