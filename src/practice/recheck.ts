import { fill } from '../sensors/sentence.ts';
import { REFUSALS } from './refusals.ts';
import type { SensorIdentity } from './person.ts';
import { type Run, beginPart } from './run.ts';

const idOf = <S>(run: Run<S>, sensor: 'chest' | 'trailArm'): string => {
  const link = run.health.get(sensor)?.link;
  return link?.id ?? link?.name ?? '';
};

/** The sensors that are worn now. */
export const sensorsOf = <S>(run: Run<S>): SensorIdentity => ({
  kind: run.options.source.kind,
  chest: idOf(run, 'chest'),
  trailArm: idOf(run, 'trailArm'),
});

const WORD = { chest: 'chest', trailArm: 'trail arm' } as const;

/** Begins the re-check; or why only a whole calibration will do, in a sentence. */
export function beginRecheck<S>(run: Run<S>): string | null {
  const { knownOf, settings } = run.options;
  if (settings.known === undefined || knownOf === undefined) return REFUSALS['nothing-kept'];
  const now = sensorsOf(run);
  if (now.kind !== knownOf.kind) return REFUSALS['other-kind'];
  const other = (['chest', 'trailArm'] as const).find((s) => now[s] !== knownOf[s]);
  if (other !== undefined) return fill(REFUSALS['other-sensor'], { sensor: WORD[other] });
  beginPart(run, 'recheck');
  return null;
}
