import { describe, expect, it } from 'vitest';
import { traceLines } from '../../src/dashboard/sensors/traceLines.ts';
import { adviceFor, factsOf, signalText } from '../../src/dashboard/sensors/facts.ts';
import { t } from '../../src/dashboard/strings/strings.ts';
import type { DeskSensor } from '../../src/streaming/contract.ts';
import { WELL } from '../streaming/deskFixtures.ts';

const texts = (sensor: DeskSensor): string[] => factsOf(sensor).map((f) => f.text);
const ill = (sensor: DeskSensor): string[] =>
  factsOf(sensor).flatMap((f) => (f.ill ? [f.name] : []));

describe('what is said of a worn sensor', () => {
  it('has a number and a unit for each thing, and nothing to do where all is well', () => {
    expect(texts(WELL)).toEqual([
      '104 of 104 Hz',
      '0.0 %',
      '0 ms ago',
      '87 %',
      'good, −60 dBm',
      '0.1 ms',
    ]);
    expect(ill(WELL)).toEqual([]);
    expect(adviceFor(WELL)).toBe('');
  });

  it('says that it does not know, never a null', () => {
    const unknown: DeskSensor = {
      ...WELL,
      batteryPct: null,
      rssiDbm: null,
      nominalRateHz: null,
      measuredRateHz: null,
      lostPct: null,
      lastPacketAgeMs: null,
      clockResidualMs: null,
    };
    expect(new Set(texts(unknown))).toEqual(new Set([t.desk.unknown]));
    expect(ill(unknown)).toEqual([]);
  });

  it.each([
    [{ measuredRateHz: 70 }, t.desk.rate, t.desk.advice.rate],
    [{ measuredRateHz: 120 }, t.desk.rate, ''],
    [{ lostPct: 3.2 }, t.desk.loss, t.desk.advice.loss],
    [{ lastPacketAgeMs: 1700 }, t.desk.last, ''],
    [{ batteryPct: 7 }, t.desk.battery, t.desk.advice.battery],
    [{ rssiDbm: -92 }, t.desk.signal, t.desk.advice.signal],
    [{ clockResidualMs: 7.1 }, t.desk.clock, t.desk.advice.clock],
    [{ malformed: 3 }, t.desk.spoilt, t.desk.advice.spoilt],
  ])('marks %o and says what to do', (change, name, advice) => {
    const sensor = { ...WELL, ...change };
    expect(ill(sensor)).toEqual([name]);
    expect(adviceFor(sensor)).toBe(advice);
    expect(adviceFor({ ...sensor, state: 'lost' })).toBe('');
  });

  it('has a word for each strength of the signal', () => {
    const words = [-110, -90, -80, -70, -55, -30].map((dbm) => signalText(dbm)?.split(',')[0]);
    expect(words).toEqual(['very weak', 'weak', 'fair', 'good', 'strong', 'strong']);
  });
});

describe('the trace of a sensor', () => {
  it('is a line where readings came, and none where they did not', () => {
    expect(traceLines([null, null])).toEqual([]);
    expect(traceLines([0, 0, null, null, 400])).toEqual(['0.0,42.0 50.0,42.0']);
    expect(traceLines([0, 400, null, 100, 100])).toHaveLength(2);
    expect(traceLines([])).toEqual([]);
  });
});
