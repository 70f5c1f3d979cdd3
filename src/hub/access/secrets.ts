import { randomBytes } from 'node:crypto';
import { hashOf } from '../../streaming/secrets.ts';

/** Of rows: 80 bits of letters and digits. */
export function newId(): string {
  const letters = 'abcdefghijkmnpqrstuvwxyz23456789';
  return Array.from(randomBytes(16), (b) => letters[b % 32]).join('');
}

const CODE_LETTERS = 'ABCDEFGHJKLMNPQRSTUVWXYZ23456789';

/** A code that people type: 50 bits, no letter that looks like another, `XXXXX-XXXXX`. */
export function newCode(): string {
  const letters = Array.from(randomBytes(10), (b) => CODE_LETTERS[b % 32]);
  return `${letters.slice(0, 5).join('')}-${letters.slice(5).join('')}`;
}

/** As typed, in any case, with spaces or dashes anywhere. */
export const codeHash = (typed: string): string =>
  hashOf(typed.toUpperCase().replaceAll(/[^A-Z0-9]/g, ''));
