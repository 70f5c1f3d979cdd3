/** A service that was heard for the last time so long ago is gone, ms: three of its signs of life in a row are missing. */
export const GONE_AFTER_MS = 1500;
/** How often the page looks, ms. */
export const LOOK_EVERY_MS = 250;

/** Counts how long a service has been silent. */
export interface Silence {
  heard(): void;
  /** To be called every `LOOK_EVERY_MS`. @returns whether the service is gone */
  look(nowMs: number): boolean;
}

/** Time in which the page itself stood still is not the service's silence: of each look at most two intervals count. */
export function newSilence(nowMs: number): Silence {
  let silentMs = 0;
  let lookedMs = nowMs;
  return {
    heard: () => (silentMs = 0),
    look: (atMs) => {
      silentMs += Math.min(atMs - lookedMs, 2 * LOOK_EVERY_MS);
      lookedMs = atMs;
      return silentMs >= GONE_AFTER_MS;
    },
  };
}
