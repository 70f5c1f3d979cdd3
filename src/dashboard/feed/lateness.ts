/** How late a message came: a page that was busy finds those of the meantime waiting. */
export interface Lateness {
  /** Another connection: what was usual before says nothing. */
  reset(): void;
  /** @param sentMs on the service's clock @param nowMs on the page's @returns ms more than the fastest one took */
  of(sentMs: number, nowMs: number): number;
}

/** The clocks of service and page have no common zero, so that the fastest message stands for "at once". */
export function newLateness(): Lateness {
  let least = Infinity;
  return {
    reset: () => (least = Infinity),
    of: (sentMs, nowMs) => {
      least = Math.min(least, nowMs - sentMs);
      return nowMs - sentMs - least;
    },
  };
}
