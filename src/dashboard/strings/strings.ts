import { type Strings, en } from './en.ts';

/** The texts of the language in use. */
export const t: Strings = en;
