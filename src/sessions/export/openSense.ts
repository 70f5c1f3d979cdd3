import { type Quat, mirrorQuat } from '../../math/quat.ts';
import type { RecordedSession } from '../openSession.ts';
import { type Frame, framesOf } from './frames.ts';

/**
 * Orientations of thorax and humerus as OpenSim's OpenSense reads them (.sto): quaternions w,x,y,z in a
 * cell, X forward, Y up, Z right, which are OpenSim's axes too. A left arm is given as it is, as humerus_l.
 * Rows that a gap touches are left out. Header as in the files that come with OpenSense.
 */
export async function* openSenseTable(session: RecordedSession): AsyncGenerator<string> {
  const left = session.header.hand === 'left';
  let before: Frame | null = null;
  let begun = false;
  for await (const frames of framesOf(session))
    for (const frame of frames) {
      if (frame.frame.gap) continue;
      if (!begun && before !== null) {
        yield header(1 / (frame.frame.timeS - before.frame.timeS), left);
        yield row(before, left);
        begun = true;
      }
      if (begun) yield row(frame, left);
      before ??= frame;
    }
  if (!begun) yield header(session.header.tracks.chest.samplingHz ?? 100, left);
}

const header = (rateHz: number, left: boolean): string =>
  [
    `DataRate=${rateHz.toFixed(6)}`,
    'DataType=Quaternion',
    'version=3',
    'OpenSimVersion=4.4',
    'endheader',
    `time\ttorso_imu\thumerus_${left ? 'l' : 'r'}_imu\n`,
  ].join('\n');

function row({ frame }: Frame, left: boolean): string {
  const own = (q: Quat): string => cell(left ? mirrorQuat(q) : q);
  return `${frame.timeS.toFixed(6)}\t${own(frame.thorax)}\t${own(frame.humerus)}\n`;
}

const cell = ({ w, x, y, z }: Quat): string => [w, x, y, z].map((v) => v.toFixed(8)).join(',');
