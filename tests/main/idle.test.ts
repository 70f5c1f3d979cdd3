import { describe, expect, it, vi } from 'vitest';
import type { LiveSensors } from '../../src/main/liveSensors.ts';
import { practiceSource } from '../../src/main/practiceSource.ts';
import { readStudentSettings } from '../../src/main/settings.ts';
import { studentHost } from '../../src/main/studentHost.ts';
import { NOBODY } from '../../src/practice/person.ts';
import { REFUSALS } from '../../src/practice/refusals.ts';
import type { SensorSource } from '../../src/sensors/sources/source.ts';

const worn = {
  kind: 'ble',
  simulated: false,
  start: vi.fn(),
  stop: async () => undefined,
} as const;
const live = { source: () => worn as SensorSource } as unknown as LiveSensors;

/** The host as `npm start -- ...args` makes it, with a look at whether its first source was started. */
async function started(...args: string[]) {
  const settings = readStudentSettings(args);
  if (settings === 'help') throw new Error('no settings');
  const first = await practiceSource(settings, live);
  const start = vi.spyOn(first.source, 'start');
  const host = studentHost({
    first,
    store: { read: () => NOBODY, write: () => undefined },
    now: () => performance.now(),
    date: () => 0,
  });
  host.current().start();
  return { host, first, start };
}

describe('The service at its start', () => {
  it.each([['demo'], ['bluetooth']])('runs no practice that nobody began (%s)', async (sensors) => {
    const { host, start } = await started('--sensors', sensors, '--hand', 'left');
    const { view, obey } = host.current();
    expect(view()).toMatchObject({ stage: 'idle', hand: 'left', person: { firstUse: true } });
    expect(start).not.toHaveBeenCalled();
    for (const type of ['pause', 'finish', 'next', 'again', 'undo'] as const)
      expect(obey({ type })).toBe(REFUSALS['no-practice']);
    expect(obey({ type: 'pain', rating: 9, signs: [] })).toBe(REFUSALS['no-practice']);
    expect(view()).toMatchObject({ stage: 'idle', warnings: [] });
    expect(obey({ type: 'double-tap', on: true })).toBeNull();
    await host.stop();
  });

  it('plays the recording that was asked for at once', async () => {
    const { host, first, start } = await started('--replay', 'recordings/right-mixed.zip');
    expect(host.current().view().stage).toBe('practice');
    expect(start).toHaveBeenCalledOnce();
    await host.stop();
    await first.close();
  });
});
