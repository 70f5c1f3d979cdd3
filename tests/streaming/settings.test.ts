import { describe, expect, it } from 'vitest';
import { SettingsError, readStudentSettings } from '../../src/main/settings.ts';
import { warpedTimers } from '../../src/main/warp.ts';

describe('the options of the service', () => {
  it('have defaults', () => {
    expect(readStudentSettings([])).toMatchObject({
      seed: 1,
      speed: 1,
      hand: 'right',
      replay: null,
    });
    expect(readStudentSettings(['--hand', 'left', '--port', '0'])).toMatchObject({
      hand: 'left',
      port: 0,
      portGiven: true,
    });
    expect(readStudentSettings([])).toMatchObject({ secondScreen: false });
    expect(readStudentSettings(['--second-screen'])).toMatchObject({ secondScreen: true });
    expect(readStudentSettings(['--help'])).toBe('help');
  });

  it.each([
    ['--port', '70000'],
    ['--port', '1.5'],
    ['--port', ''],
    ['--seed', '-1'],
    ['--speed', '0'],
    ['--speed', 'fast'],
    ['--hand', 'both'],
    ['--sensors', 'none'],
    ['--replay', ''],
  ])('refuse %s "%s" and name the option', (name, value) => {
    const read = () => readStudentSettings([`${name}=${value}`]);
    expect(read).toThrow(SettingsError);
    expect(read).toThrow(name);
  });

  it('refuse a file as the data folder', () => {
    const read = () => readStudentSettings(['--data', import.meta.filename]);
    expect(read).toThrow(SettingsError);
    expect(read).toThrow(/--data must be a folder, but .*settings\.test\.ts is a file/);
  });

  it('refuse what they do not know', () => {
    expect(() => readStudentSettings(['--ports', '1'])).toThrow(SettingsError);
    expect(() => readStudentSettings(['extra'])).toThrow('"extra" is one word too many');
    expect(() => readStudentSettings(['here'])).toThrow(SettingsError);
  });
});

describe('the clock of the demo', () => {
  it('runs fast at first, as the host afterwards, and never jumps', () => {
    let hostMs = 1000;
    const calls: number[] = [];
    const timers = warpedTimers(
      {
        now: () => hostMs,
        after: (delayMs) => {
          calls.push(delayMs);
          return () => undefined;
        },
      },
      40_000,
      10,
    );
    expect(timers.now()).toBe(0);
    timers.after(20_000, () => undefined);
    timers.after(50_000, () => undefined);
    hostMs += 4000;
    expect(timers.now()).toBe(40_000);
    timers.after(100, () => undefined);
    hostMs += 500;
    expect(timers.now()).toBe(40_500);
    expect(calls.map(Math.round)).toEqual([2000, 14_000, 100]);
  });
});
