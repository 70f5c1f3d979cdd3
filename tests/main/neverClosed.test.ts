import { join } from 'node:path';
import { expect, it } from 'vitest';
import { weekCounts } from '../../src/coaching/notCounted.ts';
import { personFile } from '../../src/main/personFile.ts';
import { studentHost } from '../../src/main/studentHost.ts';
import { NOBODY, countedSessions, volumeHistory } from '../../src/practice/person.ts';
import type { PracticeView } from '../../src/practice/view.ts';
import type { SensorSource } from '../../src/sensors/sources/source.ts';
import { SyntheticSource } from '../../src/sensors/sources/synthetic/index.ts';
import { handTimers } from '../practice/handTimers.ts';
import { scratch } from '../sessions/makeSession.ts';

const NOW = Date.UTC(2026, 4, 3, 9);
const ANSWERS = {
  clubConfirmed: true,
  historyConfirmed: true,
  warmedUp: true,
  redFlag: false,
  pain: 1,
  signs: [],
} as const;

/** The simulated student's samples as a worn sensor's: they count. */
const worn = (source: SensorSource): SensorSource => ({
  kind: 'ble',
  simulated: false,
  start: (listener) => source.start(listener),
  ask: (step) => source.ask?.(step),
  stop: () => source.stop(),
});

it('a practice that nobody closes is known with its repetitions, at once and after a restart', async () => {
  const clock = handTimers();
  const path = join(scratch(), 'person.json');
  const store = personFile(path, (sentence) => expect.fail(sentence));
  const source = worn(new SyntheticSource({ seed: 5, prompted: true, timers: clock.timers }));
  const host = studentHost({
    first: { source, hand: 'right', kind: 'guided', close: async () => undefined },
    store,
    now: clock.now,
    date: () => NOW,
  });
  const practice = host.current();
  practice.start();
  const until = (done: (view: PracticeView) => boolean): void => {
    for (let i = 0; i < 2000 && !done(practice.view()); i++) clock.pass(100);
    expect(done(practice.view()), JSON.stringify(practice.view().guide)).toBe(true);
  };
  host.obey({ type: 'safety', answers: ANSWERS });
  expect(store.read().sessions).toMatchObject([{ repetitions: 0, painAfter: null }]);
  host.obey({ type: 'next' });
  clock.pass(3000);
  host.obey({ type: 'next' });
  until(({ stage }) => stage === 'range');
  host.obey({ type: 'skip' });
  until(({ ledger }) => ledger.rehearsals + ledger.balls === 3);
  expect(practice.view().person.lastSession).toMatchObject({ startedMs: NOW, repetitions: 3 });
  const again = personFile(path, (sentence) => expect.fail(sentence)).read();
  expect(again.sessions).toMatchObject([{ repetitions: 3, painAfter: null }]);
  expect(volumeHistory(again, NOW + 1000).thisWeek).toBe(3);
  expect(weekCounts(countedSessions(again), NOW + 1000)).toMatchObject({ repetitions: 3 });
  expect(volumeHistory(NOBODY, NOW).thisWeek).toBe(0);
  await host.stop();
});
