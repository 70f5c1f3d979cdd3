const RIGHT_TO_LEFT =
  /[\u0590-\u08ff\u200e\u200f\u202a-\u202e\u2066-\u2069\ufb1d-\ufdff\ufe70-\ufeff\u{10800}-\u{10fff}\u{1e800}-\u{1efff}]/u;
const CONTROLS = /[\u202a-\u202e\u2066-\u2069]/g;
const FIRST_STRONG_ISOLATE = '\u2068';
const POP_ISOLATE = '\u2069';

/**
 * People's text as a part of a sentence: its direction is its own, and the words around it keep their order.
 * Text that is written left to right needs nothing, as all our sentences are.
 */
export const isolated = (text: string): string =>
  RIGHT_TO_LEFT.test(text)
    ? `${FIRST_STRONG_ISOLATE}${text.replace(CONTROLS, '')}${POP_ISOLATE}`
    : text;

const RUN = new RegExp(
  `${RIGHT_TO_LEFT.source}(?:[^\\p{Script=Latin}]*${RIGHT_TO_LEFT.source})*`,
  'gu',
);

/** A sentence that came with people's text in it already. */
export const isolatedWithin = (sentence: string): string => sentence.replace(RUN, isolated);

/** A dictionary whose sentences isolate each text that is put into them. */
export function isolating<T extends object>(dictionary: T): T {
  const made = new Map<unknown, unknown>();
  return new Proxy(dictionary, {
    get(of, key, receiver) {
      const value: unknown = Reflect.get(of, key, receiver);
      if (typeof value !== 'function' && (typeof value !== 'object' || value === null))
        return value;
      const found = made.get(value) ?? wrapped(value);
      made.set(value, found);
      return found;
    },
  });
}

function wrapped(value: object): unknown {
  if (typeof value !== 'function')
    return Object.getPrototypeOf(value) === Object.prototype ? isolating(value) : value;
  const sentence = value as (...given: unknown[]) => unknown;
  return (...given: unknown[]) =>
    sentence(...given.map((one) => (typeof one === 'string' ? isolated(one) : one)));
}
