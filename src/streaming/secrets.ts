import { createHash, randomBytes, timingSafeEqual } from 'node:crypto';

/** 256 bits for cookies, tokens and links. */
export const newToken = (): string => randomBytes(32).toString('base64url');

/** What is kept of a token: it is long and random, so one plain hash is enough. */
export const hashOf = (token: string): string => createHash('sha256').update(token).digest('hex');

/** In a time that tells nothing of where they differ. */
export function sameText(a: string, b: string): boolean {
  const [x, y] = [a, b].map((text) => createHash('sha256').update(text).digest());
  return timingSafeEqual(x!, y!);
}
