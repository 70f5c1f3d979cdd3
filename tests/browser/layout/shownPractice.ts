import { BehaviorSubject, NEVER } from 'rxjs';
import * as analysis from '../../../src/analysis/analysis.ts';
import { DEFAULT_PLAN } from '../../../src/coaching/plan.ts';
import type { PracticeHost } from '../../../src/practice/host.ts';
import { livePractice } from '../../../src/practice/livePractice.ts';
import { SyntheticSource } from '../../../src/sensors/sources/synthetic/index.ts';
import type { PracticeView } from '../../../src/streaming/contract.ts';
import { handTimers } from '../../practice/handTimers.ts';

/** A simulated practice after `script`, as fast as it can be computed. */
export function practised(script: string): PracticeView {
  const clock = handTimers();
  const practice = livePractice({
    practiceId: 'shown',
    source: new SyntheticSource({ seed: 3, script, hand: 'right', timers: clock.timers }),
    chain: analysis,
    settings: { hand: 'right', plan: DEFAULT_PLAN, emitFrames: true },
    now: clock.now,
  });
  practice.start();
  for (let s = 0; s < 300 && practice.view().source.state !== 'ended'; s++) clock.pass(1000);
  const { view } = practice;
  const running = { ...view().source, state: 'running' } as const;
  return { ...structuredClone(view()), source: running };
}

/** A host that shows whatever view it is given, and obeys nothing. */
export function shownPractice(first: PracticeView): {
  readonly host: PracticeHost;
  readonly show: (view: PracticeView) => void;
} {
  let shown = first;
  const nobody = livePractice({
    practiceId: 'shown',
    source: {
      kind: 'synthetic',
      simulated: true,
      start: () => undefined,
      stop: async () => undefined,
    },
    chain: analysis,
    settings: { hand: 'right', plan: DEFAULT_PLAN, emitFrames: false },
    now: () => 0,
  });
  const practice = { ...nobody, view: () => shown, start: () => undefined };
  const practices = new BehaviorSubject(practice);
  return {
    host: {
      current: () => practice,
      practices,
      changes: NEVER,
      obey: () => null,
      stop: async () => undefined,
    },
    show: (view) => {
      shown = view;
      practices.next(practice);
    },
  };
}
