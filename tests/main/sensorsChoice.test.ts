import { join } from 'node:path';
import { expect, it } from 'vitest';
import { personFile } from '../../src/main/personFile.ts';
import { studentHost } from '../../src/main/studentHost.ts';
import type { SensorSource } from '../../src/sensors/sources/source.ts';
import { SyntheticSource } from '../../src/sensors/sources/synthetic/index.ts';
import { scratch } from '../sessions/makeSession.ts';

const worn: SensorSource = {
  kind: 'ble',
  simulated: false,
  start: () => undefined,
  stop: async () => undefined,
};

it('the sensors that a person chose stay chosen after a demonstration', async () => {
  const host = studentHost({
    first: { source: worn, hand: 'right', kind: 'idle', close: async () => undefined },
    sourceFor: ({ sensors }) => (sensors === 'bluetooth' ? worn : new SyntheticSource({ seed: 1 })),
    store: personFile(join(scratch(), 'person.json'), (sentence) => expect.fail(sentence)),
    now: () => 0,
    date: () => Date.UTC(2026, 4, 3),
  });
  const chosen = () => host.current().view().person.sensors;
  const begin = (kind: 'demo' | 'guided', sensors: 'demo' | 'bluetooth') =>
    host.obey({ type: 'begin', kind, hand: 'right', sensors });
  expect(chosen()).toBe('bluetooth');
  begin('demo', 'demo');
  expect(host.current().view().source.kind).toBe('synthetic');
  expect(chosen()).toBe('bluetooth');
  begin('guided', 'demo');
  begin('demo', 'demo');
  expect(chosen()).toBe('demo');
  await host.stop();
});
