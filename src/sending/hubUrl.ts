import { Refused } from '../streaming/apiErrors.ts';
import { HUB_LINK_TEXTS } from '../streaming/hubContract/linkTexts.ts';

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
    throw new Refused(400, 'bad-address', HUB_LINK_TEXTS['bad-address']);
  if (url.protocol === 'http:' && !LOOPBACK.test(url.hostname) && !plainConfirmed)
    throw new Refused(409, 'plain-http', HUB_LINK_TEXTS['plain-http']);
  return url.origin;
}
