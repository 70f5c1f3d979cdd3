import { describe, expect, it } from 'vitest';
import { reachOf } from '../../src/hub/people/reach.ts';

describe('the address of an invitation', () => {
  it.each([
    ['http://127.0.0.1:7411/#/invitation/x', 'this-computer'],
    ['http://localhost:7411', 'this-computer'],
    ['http://[::1]:7411', 'this-computer'],
    ['http://192.168.1.20:7411', 'own-network'],
    ['http://10.0.0.4', 'own-network'],
    ['http://172.20.1.1', 'own-network'],
    ['http://172.32.1.1', 'anywhere'],
    ['http://[fe80::1]:7411', 'own-network'],
    ['http://clubhouse:7411', 'own-network'],
    ['http://desk.local', 'own-network'],
    ['https://hub.example.org', 'anywhere'],
    ['https://192.0.2.7', 'anywhere'],
  ])('%s opens from: %s', (url, reach) => {
    expect(reachOf(url)).toBe(reach);
  });
});
