import { describe, expect, it } from 'vitest';
import * as analysis from '../../src/analysis/analysis.ts';
import { DEFAULT_PLAN } from '../../src/coaching/plan.ts';
import { livePractice } from '../../src/practice/livePractice.ts';
import type { SourceListener } from '../../src/sensors/sources/source.ts';
import { simulateSession } from '../../src/sensors/sources/synthetic/index.ts';

/** A student who calibrates, rehearses, taps twice, walks, taps twice again and rehearses. */
const session = simulateSession({ seed: 2, script: 'r taps walk taps r' });
const seen = (on: boolean | null): string[] => {
  let listener: SourceListener | null = null;
  const practice = livePractice({
    practiceId: 'p',
    source: {
      kind: 'synthetic',
      simulated: true,
      start: (l) => void (listener = l),
      stop: () => Promise.resolve(),
    },
    chain: analysis,
    settings: { hand: 'right', plan: DEFAULT_PLAN },
    now: () => 0,
  });
  const phases: string[] = [];
  practice.start();
  if (on !== null) practice.obey({ type: 'double-tap', on });
  for (const event of session.events) listener!.event(event);
  for (const { samples } of session.packets) {
    listener!.samples(samples);
    const { phase } = practice.view().phase;
    if (phases.at(-1) !== phase) phases.push(phase);
  }
  void practice.stop();
  return phases;
};

describe('a double tap on the chest sensor', () => {
  it('does nothing until it is switched on, nor once it is switched off again', () => {
    expect(seen(null)).not.toContain('paused');
    expect(seen(false)).not.toContain('paused');
  });

  it('pauses, and the next one goes on', () => {
    const phases = seen(true);
    expect(phases.filter((phase) => phase === 'paused')).toHaveLength(1);
    expect(phases.slice(phases.indexOf('paused') + 1)).toContain('top');
  });
});
