/** A sensor that has sent nothing for this long, ms, is said to be silent. */
export const STALE_MS = 1500;
