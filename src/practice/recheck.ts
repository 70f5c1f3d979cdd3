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
  if (settings.known === undefined || knownOf === undefined)
    return 'No earlier calibration is kept for this hand: do the whole calibration.';
  const now = sensorsOf(run);
  if (now.kind !== knownOf.kind)
    return 'The earlier calibration was done with sensors of another kind: do the whole calibration.';
  const other = (['chest', 'trailArm'] as const).find((s) => now[s] !== knownOf[s]);
  if (other !== undefined)
    return `The ${WORD[other]} sensor is not the one of the earlier calibration: do the whole calibration.`;
  beginPart(run, 'recheck');
  return null;
}
