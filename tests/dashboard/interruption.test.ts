import { describe, expect, it } from 'vitest';
import { interruptionOf } from '../../src/dashboard/feed/interruption.ts';
import type { PracticeView, Stage } from '../../src/streaming/contract.ts';

/** What is read of a view, at a stage of a practice that is kept as `s1`. */
const at = (stage: Stage, state: PracticeView['source']['state'] = 'running'): PracticeView =>
  ({ stage, source: { state }, keeping: { sessionId: 's1', problem: null } }) as PracticeView;

describe('a service that began anew', () => {
  it('interrupted a practice that ran', () => {
    for (const stage of ['practice', 'calibrate', 'range'] as const)
      expect(interruptionOf(at(stage)), stage).toEqual({ sessionId: 's1' });
  });

  it('interrupted nothing where none ran', () => {
    for (const stage of ['idle', 'after', 'over', 'stopped'] as const)
      expect(interruptionOf(at(stage)), stage).toBeNull();
    for (const state of ['ended', 'failed'] as const)
      expect(interruptionOf(at('practice', state)), state).toBeNull();
  });
});
