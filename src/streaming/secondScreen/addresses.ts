import { BlockList } from 'node:net';
import type { NetworkInterfaceInfo } from 'node:os';
import type { NetworkAddress } from '../secondScreenContract.ts';

/** RFC 1918, RFC 3927 (link-local) and RFC 4193: addresses that no router hands on to the internet. */
const PRIVATE = new BlockList();
PRIVATE.addSubnet('10.0.0.0', 8);
PRIVATE.addSubnet('172.16.0.0', 12);
PRIVATE.addSubnet('192.168.0.0', 16);
PRIVATE.addSubnet('169.254.0.0', 16);
PRIVATE.addSubnet('fc00::', 7, 'ipv6');

const familyOf = ({ family }: NetworkInterfaceInfo): 4 | 6 => (family === 'IPv6' ? 6 : 4);

/**
 * Addresses of this computer in private networks, IPv4 first. Link-local IPv6 is left out: it needs the name of the
 * network card in the address, which browsers do not take.
 */
export function privateAddresses(
  cards: Readonly<Record<string, NetworkInterfaceInfo[] | undefined>>,
): readonly NetworkAddress[] {
  return Object.entries(cards)
    .flatMap(([card, infos]) => (infos ?? []).map((info) => ({ card, info })))
    .filter(
      ({ info }) => !info.internal && PRIVATE.check(info.address, `ipv${familyOf(info)}` as const),
    )
    .map(({ card, info }) => ({ address: info.address, family: familyOf(info), card }))
    .sort((a, b) => a.family - b.family);
}
