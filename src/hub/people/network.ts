import { isIPv6 } from 'node:net';

/** What one subscriber has: an IPv4 address, or the first 64 bits of an IPv6 one (RFC 6177, from memory: a site gets at least as much). */
export function networkOf(ip: string): string {
  const mapped = /^::ffff:(\d+\.\d+\.\d+\.\d+)$/i.exec(ip)?.[1];
  if (mapped !== undefined) return mapped;
  const address = ip.replace(/%.*$/, '');
  if (!isIPv6(address)) return ip;
  const plain = new URL(`http://[${address}]`).hostname.slice(1, -1);
  const [head = [], tail] = plain.split('::').map((side) => side.split(':').filter(Boolean));
  const zeros = Array.from({ length: 8 - head.length - (tail?.length ?? 0) }, () => '0');
  const groups = [...head, ...(tail === undefined ? [] : zeros), ...(tail ?? [])];
  return `${groups.slice(0, 4).join(':')}::/64`;
}
