import type { SensorView } from '../../streaming/contract.ts';

/** A sensor that has sent nothing for this long, ms, is said to be silent. */
const STALE_MS = 1500;

/** It sends as it should, or has nothing more to send. */
export const isWell = ({ state, ageMs }: SensorView): boolean =>
  state === 'ended' || (state === 'streaming' && (ageMs === null || ageMs <= STALE_MS));
