import { hash, verify } from '@node-rs/argon2';

/** Argon2id with the library's settings (19 MiB, two passes): what OWASP's password storage sheet asks for at least. */
export const hashPassword = (password: string): Promise<string> => hash(password);

/** Of no account: checking it takes as long as checking a real one. */
let nobody: Promise<string> | null = null;

/** `kept` is `null` where there is no such account; it is never right then. */
export async function isPassword(password: string, kept: string | null): Promise<boolean> {
  nobody ??= hashPassword('nobody has this password');
  const right = await verify(kept ?? (await nobody), password);
  return kept !== null && right;
}
