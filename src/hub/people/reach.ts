import type { Reach } from '../../streaming/hubContract/people.ts';

const LOOPBACK = /^(localhost|127(\.\d{1,3}){3}|\[::1\])$/;
/** RFC 1918, link-local, and names that only the own network knows. */
const PRIVATE =
  /^(10(\.\d{1,3}){3}|192\.168(\.\d{1,3}){2}|172\.(1[6-9]|2\d|3[01])(\.\d{1,3}){2}|169\.254(\.\d{1,3}){2}|\[f[cde][0-9a-f]{2}:.*\]|[^.]+|.*\.(local|lan|home|internal))$/i;

/** From where an address of the hub can be opened, as far as the address itself says. */
export function reachOf(url: string): Reach {
  const { hostname } = new URL(url);
  if (LOOPBACK.test(hostname)) return 'this-computer';
  return PRIVATE.test(hostname) ? 'own-network' : 'anywhere';
}
