import type { FastifyReply } from 'fastify';
import { type HubContext, isSecure } from '../context.ts';

/** Browsers take a cookie of a name with this start only over HTTPS, for this host alone. */
const nameOf = (name: string, secure: boolean): string => (secure ? `__Host-${name}` : name);

/** Of a sign-in. */
export const cookieName = (secure: boolean): string => nameOf('stillcatch', secure);
/** By which a browser is known again; it lets nobody in. */
export const deviceCookieName = (secure: boolean): string => nameOf('stillcatch-device', secure);

const optionsOf = (secure: boolean) =>
  ({ httpOnly: true, sameSite: 'strict', secure, path: '/' }) as const;

type NameOf = (secure: boolean) => string;

export function setCookie(
  { settings }: HubContext,
  reply: FastifyReply,
  name: NameOf,
  token: string,
  days: number,
): void {
  const secure = isSecure(settings);
  reply.setCookie(name(secure), token, { ...optionsOf(secure), maxAge: days * 86_400 });
}

export function clearCookie({ settings }: HubContext, reply: FastifyReply, name: NameOf): void {
  const secure = isSecure(settings);
  reply.clearCookie(name(secure), optionsOf(secure));
}
