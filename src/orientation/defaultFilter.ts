import { vqfFilter } from './vqfFilter.ts';

/** The filter that measures best on recorded trials with optical truth (`npm run bench:orientation`). */
export const defaultFilter = vqfFilter;
export type DefaultFilterState = ReturnType<typeof defaultFilter.create>;
