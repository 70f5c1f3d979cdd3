import { expect, it } from 'vitest';
import { fallText } from '../../src/coaching/measureText.ts';

it.each<[number, string, string]>([
  [0, '0 cm', '0 in'],
  // one international inch is 2.54 cm exactly (International Yard and Pound Agreement 1959)
  [25.4, '25 cm', '10 in'],
  [44.13, '44 cm', '17 in'],
])('a fall of %f cm reads %s or %s', (cm, metric, imperial) => {
  expect(fallText(cm, 'cm')).toBe(metric);
  expect(fallText(cm, 'in')).toBe(imperial);
});
