import type { DeskSensor } from '../../streaming/contract.ts';
import { t } from '../strings/strings.ts';

/** One number of a sensor, with its name, and whether it is as it should be. */
export interface Fact {
  readonly name: string;
  readonly text: string;
  readonly ill: boolean;
  /** What to do where it is not; empty where nothing is to be done. */
  readonly advice: string;
}

const fact = (name: string, text: string | null, ill = false, advice = ''): Fact => ({
  name,
  text: text ?? t.desk.unknown,
  ill,
  advice,
});

/** Rough bands of received signal strength, dBm: common practice, no source. */
const STRENGTH_FROM = [-Infinity, -90, -80, -70, -55];

export function signalText(rssiDbm: number | null): string | null {
  if (rssiDbm === null) return null;
  const word = STRENGTH_FROM.findLastIndex((from) => rssiDbm >= from);
  return t.desk.dbm(rssiDbm, t.desk.strength[Math.max(0, word)] ?? '');
}

const WEAK_DBM = -85;
const LOW_BATTERY_PCT = 20;
const MUCH_LOST_PCT = 1;
const OLD_MS = 1500;
const LOOSE_CLOCK_MS = 5;

function rateFact({ measuredRateHz, nominalRateHz }: DeskSensor): Fact {
  if (measuredRateHz === null || nominalRateHz === null) return fact(t.desk.rate, null);
  const off = Math.abs(measuredRateHz / nominalRateHz - 1) > 0.05;
  const text = t.desk.ofHz(measuredRateHz.toFixed(0), nominalRateHz.toFixed(0));
  return fact(t.desk.rate, text, off, measuredRateHz < nominalRateHz ? t.desk.advice.rate : '');
}

function ageFact({ lastPacketAgeMs }: DeskSensor): Fact {
  if (lastPacketAgeMs === null) return fact(t.desk.last, null);
  const text =
    lastPacketAgeMs < 1000
      ? t.desk.ago(lastPacketAgeMs.toFixed(0))
      : t.desk.longAgo((lastPacketAgeMs / 1000).toFixed(0));
  return fact(t.desk.last, text, lastPacketAgeMs > OLD_MS);
}

/** No clock is said to be steadier than this, ms: stamps and arrivals are no finer. */
const FINEST_MS = 0.1;

const clockText = (residualMs: number | null): string | null =>
  residualMs === null ? null : t.desk.residual(t.decimal(Math.max(FINEST_MS, residualMs), 1));

/** What is known of a worn sensor's link. */
export function factsOf(s: DeskSensor): Fact[] {
  const { lostPct, batteryPct, rssiDbm, clockResidualMs, malformed } = s;
  const { advice } = t.desk;
  return [
    rateFact(s),
    fact(
      t.desk.loss,
      lostPct === null ? null : t.desk.percent(t.decimal(lostPct, 1)),
      (lostPct ?? 0) > MUCH_LOST_PCT,
      advice.loss,
    ),
    ageFact(s),
    fact(
      t.desk.battery,
      batteryPct === null ? null : t.desk.percent(batteryPct.toFixed(0)),
      (batteryPct ?? 100) < LOW_BATTERY_PCT,
      advice.battery,
    ),
    fact(t.desk.signal, signalText(rssiDbm), (rssiDbm ?? 0) < WEAK_DBM, advice.signal),
    fact(
      t.desk.clock,
      clockText(clockResidualMs),
      (clockResidualMs ?? 0) > LOOSE_CLOCK_MS,
      advice.clock,
    ),
    ...(malformed > 0 ? [fact(t.desk.spoilt, String(malformed), true, advice.spoilt)] : []),
  ];
}

/** The first thing to do about a sensor that sends; empty where all is well. */
export const adviceFor = (s: DeskSensor): string =>
  s.state === 'streaming' ? (factsOf(s).find((f) => f.ill && f.advice !== '')?.advice ?? '') : '';
