import type { NetworkInterfaceInfo } from 'node:os';
import { describe, expect, it } from 'vitest';
import { widestOfTwo } from '../../../src/dashboard/practice/fit.ts';
import { nextPlace } from '../../../src/dashboard/watch/place.ts';
import { privateAddresses } from '../../../src/streaming/secondScreen/addresses.ts';
import { codeView, newPairingCode, tryCode } from '../../../src/streaming/secondScreen/code.ts';
import { newScreens } from '../../../src/streaming/secondScreen/screens.ts';
import { CODE_HOLDS_S, CODE_TRIES } from '../../../src/streaming/secondScreenContract.ts';

const info = (address: string, internal = false): NetworkInterfaceInfo =>
  ({
    address,
    internal,
    family: address.includes(':') ? 'IPv6' : 'IPv4',
    netmask: '',
    mac: '',
    cidr: null,
  }) as NetworkInterfaceInfo;

describe('addresses that a second screen may be shown at', () => {
  // Ranges: RFC 1918, RFC 3927, RFC 4193; what lies just outside of each is not private.
  it.each([
    ['10.0.0.1', true],
    ['11.0.0.1', false],
    ['172.15.255.255', false],
    ['172.16.0.1', true],
    ['172.31.255.254', true],
    ['172.32.0.1', false],
    ['192.168.1.5', true],
    ['192.169.0.1', false],
    ['169.254.3.4', true],
    ['100.64.0.1', false],
    ['203.0.113.9', false],
    ['0.0.0.0', false],
    ['fd12:3456::1', true],
    ['fc00::1', true],
    ['fe80::1', false],
    ['2001:db8::1', false],
    ['::', false],
  ])('%s: %s', (address, taken) => {
    expect(privateAddresses({ card: [info(address)] }).map((a) => a.address)).toEqual(
      taken ? [address] : [],
    );
  });

  it('leaves out this computer itself and puts IPv4 first', () => {
    const cards = { lo: [info('10.0.0.9', true)], a: [info('fd00::2')], b: [info('10.0.0.2')] };
    expect(privateAddresses(cards)).toEqual([
      { address: '10.0.0.2', family: 4, card: 'b' },
      { address: 'fd00::2', family: 6, card: 'a' },
    ]);
    expect(privateAddresses({ x: undefined })).toEqual([]);
  });
});

describe('a pairing code', () => {
  it('has six digits, another one each time', () => {
    const codes = Array.from({ length: 50 }, () => newPairingCode(0).digits);
    for (const digits of codes) expect(digits).toMatch(/^\d{6}$/);
    expect(new Set(codes).size).toBeGreaterThan(45);
  });

  it('lets in once', () => {
    const code = newPairingCode(0);
    expect(tryCode(code, ` ${code.digits.slice(0, 3)} ${code.digits.slice(3)} `, 1)).toBe('right');
    expect(tryCode(code, code.digits, 2)).toBe('no');
    expect(codeView(code, 2)).toEqual({ state: 'used', digits: null, leftS: 0 });
  });

  it('runs out', () => {
    const code = newPairingCode(1000);
    const endMs = 1000 + CODE_HOLDS_S * 1000;
    expect(codeView(code, endMs - 1)).toEqual({ state: 'waiting', digits: code.digits, leftS: 1 });
    expect(codeView(code, endMs)).toEqual({ state: 'expired', digits: null, leftS: 0 });
    expect(tryCode(code, code.digits, endMs)).toBe('no');
  });

  it('is spent after wrong tries, the right one among the later ones included', () => {
    const code = newPairingCode(0);
    const wrong = code.digits === '000000' ? '000001' : '000000';
    for (let i = 0; i < CODE_TRIES; i++) expect(tryCode(code, wrong, 1)).toBe('wrong');
    expect(tryCode(code, code.digits, 1)).toBe('no');
    expect(codeView(code, 1).state).toBe('spent');
  });
});

describe('screens that were let in', () => {
  it('are known by a long token until they are ended', () => {
    const screens = newScreens();
    const token = screens.add('10.0.0.7', 5);
    expect(token.length).toBeGreaterThan(40);
    const id = screens.idOf(token)!;
    expect(screens.all()).toEqual([{ id, address: '10.0.0.7', pairedMs: 5 }]);
    expect(JSON.stringify(screens.all())).not.toContain(token);
    expect(screens.idOf(`${token}x`)).toBeNull();
    expect(screens.idOf(undefined)).toBeNull();
    expect(screens.remove('another')).toBe(false);
    expect(screens.remove(id)).toBe(true);
    expect(screens.idOf(token)).toBeNull();
  });
});

describe('the page of the second screen', () => {
  it('stays where it is while the laptop does not answer', () => {
    expect(nextPlace('looking', 'closed')).toBe('outside');
    expect(nextPlace('outside', 'open')).toBe('inside');
    expect(nextPlace('inside', 'none')).toBe('inside');
    expect(nextPlace('inside', 'closed')).toBe('ended');
    expect(nextPlace('ended', 'closed')).toBe('ended');
    expect(nextPlace('ended', 'open')).toBe('inside');
  });

  it.each([
    ['Catch', 5],
    ['To the top', 6],
    ['Hit a ball', 5],
    ['', 0],
  ])('lays "%s" out in two lines of at most %i letters', (text, widest) => {
    expect(widestOfTwo(text)).toBe(widest);
  });
});
