import type { JudgedRepetition } from '../../../coaching/judgement.ts';
import type { RepetitionCurves } from '../../../streaming/sessionsContract.ts';
import { type Flight, flightOf } from '../../body/flight.ts';
import { poseAt } from './poseAt.ts';

/** How the club fell in a rehearsal; `null` where it stays in the hands, or the release was lost. */
export const flightIn = (r: JudgedRepetition, { poses }: RepetitionCurves): Flight | null =>
  r.kind === 'rehearsal' ? flightOf((s) => poseAt(poses, s), r.releaseS, r.catchS) : null;
