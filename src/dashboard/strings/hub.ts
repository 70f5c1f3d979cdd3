import { hubDe } from './hubDe.ts';
import { hubEn } from './hubEn.ts';
import { isolating } from './isolated.ts';
import type { HubStrings } from './hubShape.ts';
import { type Language, language } from './language.ts';

const DICTIONARIES: Readonly<Record<Language, HubStrings>> = { en: hubEn, de: hubDe };

/** The hub's texts in the language in use. */
export const h: HubStrings = isolating(DICTIONARIES[language]);
