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
const UNLINKED: Pick<LinkStatus, 'state' | 'reason' | 'retryInMs' | 'batteryPct' | 'rssiDbm'> = {
  state: 'found',
  reason: null,
  retryInMs: null,
  batteryPct: null,
  rssiDbm: null,
};

const healthView = (health: StreamHealth | null) => ({
  nominalRateHz: health?.nominalRateHz ?? null,
  measuredRateHz: health?.measuredRateHz ?? null,
  lostPct: health?.lostPct ?? null,
  lastPacketAgeMs: health?.lastPacketAgeS ? Math.round(1000 * health.lastPacketAgeS) : null,
  clockResidualMs: health?.clockResidualMs ?? null,
  malformed: health?.malformed ?? 0,
});

/** All sensors that are worn, tried or seen; worn ones first. */
export function deskSensors(
  status: RadioStatus,
  pairings: readonly Assignment[],
  candidates: ReadonlyMap<string, Candidate>,
  nowS: number,
): DeskSensor[] {
  const wishes = new Map<string, Wish>(status.seen.map((s) => [s.id, s]));
  for (const { wish } of candidates.values()) wishes.set(wish.id, wish);
  const sensor = (wish: Wish): DeskSensor => {
    const candidate = candidates.get(wish.id);
    const seen = status.seen.find((s) => s.id === wish.id);
    const link = status.links.find((l) => l.wish.id === wish.id) ?? UNLINKED;
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
      rssiDbm: link.rssiDbm ?? seen?.rssiDbm ?? null,
      ...healthView(candidate?.health(nowS) ?? null),
      canBlink: driver.identify !== null,
      trace: candidate?.trace(nowS) ?? [],
    };
  };
  return [...wishes.values()]
    .map(sensor)
    .sort((a, b) => ORDER.indexOf(a.role) - ORDER.indexOf(b.role) || a.id.localeCompare(b.id));
}
