import { madgwickFilter, mahonyFilter } from '../../src/orientation/ahrsFilter.ts';
import type { FilterState, OrientationFilter } from '../../src/orientation/orientation.ts';
import { vqfFilter } from '../../src/orientation/vqfFilter.ts';

// A list of filters of different states: each state only ever meets its own filter.
export const FILTERS = [
  vqfFilter,
  mahonyFilter,
  madgwickFilter,
] as unknown as readonly OrientationFilter<FilterState>[];

export const named = FILTERS.map((f) => [f.name, f] as const);
