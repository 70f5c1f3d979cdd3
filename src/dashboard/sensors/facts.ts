import type { DeskSensor } from '../../streaming/contract.ts';
import { t } from '../strings/strings.ts';

/** One number of a sensor, with its name, and whether it is as it should be. */
export interface Fact {
  readonly name: string;
  readonly text: string;
  readonly ill: boolean;
}

const fact = (name: string, text: string | null, ill = false): Fact => ({
  name,
  text: text ?? t.desk.unknown,
  ill,
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
  return fact(t.desk.rate, t.desk.ofHz(measuredRateHz.toFixed(0), nominalRateHz.toFixed(0)), off);
}

function ageFact({ lastPacketAgeMs }: DeskSensor): Fact {
  if (lastPacketAgeMs === null) return fact(t.desk.last, null);
  const text =
    lastPacketAgeMs < 1000
      ? t.desk.ago(lastPacketAgeMs.toFixed(0))
      : t.desk.longAgo((lastPacketAgeMs / 1000).toFixed(0));
  return fact(t.desk.last, text, lastPacketAgeMs > OLD_MS);
}

/** What is known of a worn sensor's link. */
export function factsOf(s: DeskSensor): Fact[] {
  const { lostPct, batteryPct, rssiDbm, clockResidualMs, malformed } = s;
  return [
    rateFact(s),
    fact(
      t.desk.loss,
      lostPct === null ? null : t.desk.percent(t.decimal(lostPct, 1)),
      (lostPct ?? 0) > MUCH_LOST_PCT,
    ),
    ageFact(s),
    fact(
      t.desk.battery,
      batteryPct === null ? null : t.desk.percent(batteryPct.toFixed(0)),
      (batteryPct ?? 100) < LOW_BATTERY_PCT,
    ),
    fact(t.desk.signal, signalText(rssiDbm), (rssiDbm ?? 0) < WEAK_DBM),
    fact(
      t.desk.clock,
      clockResidualMs === null ? null : t.desk.residual(t.decimal(clockResidualMs, 1)),
      (clockResidualMs ?? 0) > LOOSE_CLOCK_MS,
    ),
    ...(malformed > 0 ? [fact(t.desk.spoilt, String(malformed), true)] : []),
  ];
}
