import type { StreamHealth } from '../../clock/stream.ts';
import type { SensorRole } from '../../sample.ts';
import type { DeskSensor } from '../deskView.ts';
import type { Assignment } from './bleSource.ts';
import type { Candidate } from './candidate.ts';
import { driverOf } from './drivers/drivers.ts';
import type { Wish } from './messages.ts';
import type { LinkStatus, RadioStatus } from './radio.ts';

const ORDER: readonly (SensorRole | null)[] = ['chest', 'trailArm', 'club', null];

/** Where a link that nobody made yet stands: it was seen, no more. */
const unlinked = (
  reason: string | null,
): Pick<LinkStatus, 'state' | 'reason' | 'retryInMs' | 'batteryPct' | 'rssiDbm'> => ({
  state: 'found',
  reason,
  retryInMs: null,
  batteryPct: null,
  rssiDbm: null,
});

/** Loss and clock tell of a running stream; of one that stands still they would be old news. */
const healthView = (health: StreamHealth | null, streaming: boolean) => ({
  nominalRateHz: health?.nominalRateHz ?? null,
  measuredRateHz: health && !streaming ? 0 : (health?.measuredRateHz ?? null),
  lostPct: streaming ? (health?.lostPct ?? null) : null,
  lastPacketAgeMs: toMs(health?.lastPacketAgeS ?? null),
  clockResidualMs: streaming ? (health?.clockResidualMs ?? null) : null,
  malformed: health?.malformed ?? 0,
});

/** Two of one name are told apart by the ends of their addresses. */
function toldApart(sensors: readonly DeskSensor[]): DeskSensor[] {
  const named = (name: string): number => sensors.filter((s) => s.name === name).length;
  return sensors.map((s) =>
    named(s.name) > 1 ? { ...s, name: `${s.name} (${s.id.slice(-4)})` } : s,
  );
}

const toMs = (s: number | null): number | null => (s === null ? null : Math.round(1000 * s));

/**
 * All sensors that are worn, tried or seen; worn ones first.
 * @param waits why one that is only seen is not connected; `null` where it is about to be
 */
export function deskSensors(
  status: RadioStatus,
  pairings: readonly Assignment[],
  candidates: ReadonlyMap<string, Candidate>,
  nowS: number,
  waits: string | null,
): DeskSensor[] {
  const wishes = new Map<string, Wish>(status.seen.map((s) => [s.id, s]));
  for (const { wish } of candidates.values()) wishes.set(wish.id, wish);
  const sensor = (wish: Wish): DeskSensor => {
    const candidate = candidates.get(wish.id);
    const seen = status.seen.find((s) => s.id === wish.id);
    const link = status.links.find((l) => l.wish.id === wish.id) ?? unlinked(waits);
    const streaming = link.state === 'streaming';
    const driver = driverOf(wish.driver);
    return {
      id: wish.id,
      name: seen?.name ?? wish.name,
      kind: driver.label,
      role: pairings.find((a) => a.sensor.id === wish.id)?.role ?? null,
      state: link.state,
      reason: link.reason,
      retryInMs: link.retryInMs,
      batteryPct: link.batteryPct,
      rssiDbm: (streaming ? link.rssiDbm : null) ?? seen?.rssiDbm ?? null,
      ...healthView(candidate?.health(nowS) ?? null, streaming),
      canBlink: driver.identify !== null,
      trace: candidate?.trace(nowS) ?? [],
    };
  };
  return toldApart([...wishes.values()].map(sensor)).sort(
    (a, b) => ORDER.indexOf(a.role) - ORDER.indexOf(b.role) || a.id.localeCompare(b.id),
  );
}
