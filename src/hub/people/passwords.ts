import type * as Argon2 from '@node-rs/argon2';
import { Refused } from '../../streaming/apiErrors.ts';

/**
 * Its native half is an optional package for each system: loaded only here, so that its absence can be told.
 * @throws Error in words
 */
export const argon2 = (): Promise<typeof Argon2> =>
  import('@node-rs/argon2').catch((cause: unknown) => {
    const words =
      'A hub needs the native half of its password part, which was left out; get it with: npm install --include=optional';
    throw new Error(words, { cause });
  });

/** Argon2id with the library's settings (19 MiB, two passes): what OWASP's password storage sheet asks for at least. */
const hashPassword = async (password: string): Promise<string> => (await argon2()).hash(password);

/** Commonest ones of ten characters and more, from memory; those of fewer are refused anyway. */
const COMMON = new Set(
  `0123456789 1234567890 12345678910 123456789a 1234567891 0987654321 9876543210 1q2w3e4r5t q1w2e3r4t5 1qaz2wsx3edc
  qwertyuiop qwerty1234 qwerty12345 qwerty123456 qwertyqwerty asdfghjkl1 asdfghjklm zxcvbnm123 abcdefghij abcdef1234
  abc1234567 password12 password123 password1234 password12345 passwordpassword passw0rd123 p@ssword123 mypassword
  changeme123 letmein123 letmeinletmein welcome123 welcome1234 iloveyou123 iloveyou12 administrator admin12345
  admin123456 football123 baseball123 sunshine123 princess123 superman123 trustno1trustno1 stillcatch stillcatch1
  stillcatch123 golfgolfgolf golfgolf123`.split(/\s+/),
);

/** Long is asked of the schema, nothing of which characters. @throws Refused for one that would be tried first */
export function refuseWeak(password: string, login: string): void {
  const plain = password.toLowerCase();
  if (plain.includes(login.toLowerCase()) && plain.length < login.length + 6)
    throw new Refused(400, 'weak-password', 'Password: too similar to the sign-in name.');
  if (COMMON.has(plain) || new Set(plain).size < 4)
    throw new Refused(400, 'weak-password', 'This password is too common. Choose another one.');
}

/** @throws Refused for a weak one */
export async function newPasswordHash(password: string, login: string): Promise<string> {
  refuseWeak(password, login);
  return hashPassword(password);
}

/** Of no account: checking it takes as long as checking a real one. */
let nobody: Promise<string> | null = null;

/** `kept` is `null` where there is no such account; it is never right then. */
export async function isPassword(password: string, kept: string | null): Promise<boolean> {
  nobody ??= hashPassword('nobody has this password');
  const { verify } = await argon2();
  const right = await verify(kept ?? (await nobody), password);
  return kept !== null && right;
}
