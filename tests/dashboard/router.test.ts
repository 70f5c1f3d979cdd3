import { expect, it } from 'vitest';
import { decoded, routeOf } from '../../src/dashboard/shell/router.ts';

it('an address names a screen by its first part', () => {
  expect(routeOf('#/sessions/abc')).toBe('sessions');
  expect(routeOf('#/sessions')).toBe('sessions');
  expect(routeOf('#/nowhere')).toBeNull();
});

it('an address that cannot be decoded names nothing, and breaks nothing', () => {
  expect(decoded('%')).toBe('%');
  expect(decoded('a%20b')).toBe('a b');
});
