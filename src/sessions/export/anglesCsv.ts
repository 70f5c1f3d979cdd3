import type { RecordedSession } from '../openSession.ts';
import { type Frame, framesOf } from './frames.ts';

const HEADER =
  'time_s,flexion_deg,lateral_deg,lean_deg,turn_deg,elevation_deg,plane_deg,external_rotation_deg,valid\n';

/**
 * The angle curves, one row a sample of the chest sensor, empty at the pole. `valid` is 1 where plane and
 * external rotation mean something: elevation 30-150 deg and no gap.
 */
export async function* anglesCsv(session: RecordedSession): AsyncGenerator<string> {
  yield HEADER;
  for await (const frames of framesOf(session)) yield frames.map(row).join('');
}

function row({ frame, angles }: Frame): string {
  const cells = [
    frame.timeS.toFixed(4),
    degrees(angles.flexionDeg),
    degrees(angles.lateralDeg),
    degrees(angles.leanDeg),
    degrees(angles.turnDeg),
    degrees(angles.elevationDeg),
    degrees(angles.planeDeg),
    degrees(angles.externalRotationDeg),
    angles.valid && !frame.gap ? '1' : '0',
  ];
  return `${cells.join(',')}\n`;
}

const degrees = (value: number | null): string => (value === null ? '' : value.toFixed(3));
