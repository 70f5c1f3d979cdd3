import { Refused } from '../streaming/apiErrors.ts';

const LOOPBACK = /^(localhost|127(\.\d{1,3}){3}|\[::1\])$/;

/**
 * The hub's address as it is used. Recordings and the token go there, so nobody on the way may read them.
 * @throws Refused in words where it is none, or is plain http to another computer and that was not confirmed.
 */
export function checkedHubUrl(typed: string, plainConfirmed: boolean): string {
  const given = typed.trim();
  const text = /^[a-z]+:\/\//i.test(given) ? given : `https://${given}`;
  const url = URL.canParse(text) ? new URL(text) : null;
  if (url === null || !/^https?:$/.test(url.protocol) || url.username !== '' || url.hostname === '')
    throw new Refused(400, 'bad-address', 'That is no address of a hub: it begins with https://');
  if (url.protocol === 'http:' && !LOOPBACK.test(url.hostname) && !plainConfirmed)
    throw new Refused(
      409,
      'plain-http',
      'This address is not encrypted: anyone on the way could read your recordings and notes. Ask your coach for an address with https://, or go on all the same.',
    );
  return url.origin;
}
