import type { hubEn } from './hubEn.ts';
import type { Words } from './shape.ts';

/** What the hub's pages have in every language. */
export type HubStrings = Words<typeof hubEn>;
