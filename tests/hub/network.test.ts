import { expect, it } from 'vitest';
import { networkOf } from '../../src/hub/people/network.ts';

// RFC 4291 (text forms of addresses), RFC 5952 (one form of each); addresses of RFC 3849 and RFC 5737 for examples
it.each([
  ['192.0.2.7', '192.0.2.7'],
  ['::ffff:192.0.2.7', '192.0.2.7'],
  ['2001:db8:1:2:3:4:5:6', '2001:db8:1:2::/64'],
  ['2001:DB8:1:2::1', '2001:db8:1:2::/64'],
  ['2001:0db8:0001:0002:ffff:ffff:ffff:ffff', '2001:db8:1:2::/64'],
  ['2001:db8::1', '2001:db8:0:0::/64'],
  ['::1', '0:0:0:0::/64'],
  ['fe80::1%eth0', 'fe80:0:0:0::/64'],
])('%s belongs to %s', (ip, network) => {
  expect(networkOf(ip)).toBe(network);
});
