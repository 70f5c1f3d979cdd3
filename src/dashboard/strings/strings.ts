import { de } from './de.ts';
import { en } from './en.ts';
import { type Language, language } from './language.ts';
import { isolating } from './isolated.ts';
import type { Strings } from './shape.ts';

export const DICTIONARIES: Readonly<Record<Language, Strings>> = { en, de };

/** The texts of the language in use. */
export const t: Strings = {
  ...isolating(DICTIONARIES[language]),
  // Finds whole sentences of the core in its tables.
  said: DICTIONARIES[language].said,
};
