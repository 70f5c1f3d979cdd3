import type { PoseView, PracticeView } from '../../streaming/contract.ts';
import type { Hands } from './figure.ts';
import { type Flight, flightOf, handsDuring } from './flight.ts';

/** What has to be remembered to draw the hands of a practice that goes on. Written in place. */
export interface LiveHands {
  readonly recent: { readonly timeS: number; readonly pose: PoseView }[];
  flight: Flight | null;
  /** What the flight was made of. */
  of: string;
}

export const newLiveHands = (): LiveHands => ({ recent: [], flight: null, of: '' });

/** Of poses, longer than from a release to the end of what follows it, s. */
const KEEP_S = 3;

function keep({ recent }: LiveHands, timeS: number, pose: PoseView): void {
  const last = recent.at(-1);
  // Another practice, or the clock was set back.
  if (last !== undefined && timeS < last.timeS) recent.length = 0;
  if (last?.timeS !== timeS) recent.push({ timeS, pose });
  while (timeS - (recent[0]?.timeS ?? timeS) > KEEP_S) recent.shift();
}

/** The pose nearest to a time, within a tenth of a second. */
function near({ recent }: LiveHands, timeS: number): PoseView | null {
  let best: LiveHands['recent'][number] | null = null;
  for (const one of recent)
    if (best === null || Math.abs(one.timeS - timeS) < Math.abs(best.timeS - timeS)) best = one;
  return best !== null && Math.abs(best.timeS - timeS) < 0.1 ? best.pose : null;
}

/**
 * The hands of the moment. The club falls from the moment the release was seen, and is in the hand from the
 * moment the catch was; where none was, it stays where it fell until the next address.
 */
export function followHands(live: LiveHands, view: PracticeView): Hands {
  const { phase, sinceS } = view.phase;
  const nowS = view.curve.timeS.at(-1) ?? sinceS;
  if (view.pose !== null) keep(live, nowS, view.pose);
  if (phase === 'calibrating') return { do: 'hang' };
  if (phase === 'address' || phase === 'backswing' || phase === 'top') live.flight = null;
  const key = `${view.practiceId} ${phase} ${sinceS}`;
  if ((phase === 'released' || phase === 'caught') && live.of !== key) {
    const releaseS = phase === 'released' ? sinceS : (live.flight?.releaseS ?? sinceS);
    live.flight = flightOf((s) => near(live, s), releaseS, phase === 'caught' ? sinceS : null);
    live.of = key;
  }
  return handsDuring(live.flight, nowS);
}
