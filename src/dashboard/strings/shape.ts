import type { MeasureInfo } from '../../coaching/measureInfo.ts';
import type { en } from './en.ts';

/** The same keys, lists of the same length and functions of the same arguments, with other words. */
export type Words<T> = T extends string
  ? string
  : T extends MeasureInfo | number | boolean | null | undefined
    ? T
    : T extends (...args: infer A) => infer R
      ? (...args: A) => R extends string ? string : R
      : { readonly [K in keyof T]: Words<T[K]> };

/** What every language has. */
export type Strings = Words<typeof en>;
