/** A seeded stream of uniform numbers in [0, 1). */
export type Random = () => number;

/** Mulberry32 (T. Ettinger, public domain): 32-bit state, deterministic by seed. */
export function seededRandom(seed: number): Random {
  let a = seed >>> 0;
  return () => {
    a = (a + 0x6d2b79f5) >>> 0;
    let t = Math.imul(a ^ (a >>> 15), 1 | a);
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
}

/** Standard normal number by Box and Muller 1958. */
export function gaussian(random: Random): number {
  const u = 1 - random();
  return Math.sqrt(-2 * Math.log(u)) * Math.cos(2 * Math.PI * random());
}

export const uniform = (random: Random, low: number, high: number): number =>
  low + (high - low) * random();
