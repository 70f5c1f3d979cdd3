/** Tries of one address at what could be guessed. A choice. */
export const STRICT = { max: 10, timeWindow: '1 minute' } as const;
