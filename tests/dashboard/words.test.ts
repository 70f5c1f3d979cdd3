import { describe, expect, it } from 'vitest';
import { DEFAULT_PLAN } from '../../src/coaching/plan.ts';
import { SCALES, measureRows, place } from '../../src/dashboard/measures/rows.ts';
import { stageWord } from '../../src/dashboard/practice/stateWord.ts';
import { readPrefs } from '../../src/dashboard/shell/prefs.ts';
import { routeOf, screenFor } from '../../src/dashboard/shell/router.ts';
import { newDraft, setSection, takeEvent, takeOutput } from '../../src/practice/reduce.ts';
import { ball, phase, rehearsal } from '../practice/scripted.ts';

const draft = () =>
  newDraft('p', { hand: 'right', plan: DEFAULT_PLAN }, { kind: 'synthetic', simulated: true });

describe('the word on the stage', () => {
  it('leads through a repetition', () => {
    const d = draft();
    const words = [
      phase('waiting', 1),
      phase('address', 2),
      phase('backswing', 3),
      phase('top', 4, 0.64),
      phase('top', 4, 1.02),
      phase('released', 5),
      phase('caught', 5.4),
    ].map((output) => {
      takeOutput(d, output);
      return stageWord(d.view).word;
    });
    expect(words).toEqual([
      'Address',
      'To the top',
      'To the top',
      'Hold 0.6',
      'Let go',
      'Catch',
      'Caught',
    ]);
  });

  it('asks for a ball at the address when one is due', () => {
    const d = draft();
    takeOutput(d, { kind: 'repetition', others: [], repetition: rehearsal(1) });
    takeOutput(d, { kind: 'repetition', others: [], repetition: rehearsal(2) });
    takeOutput(d, phase('address', 2));
    expect(stageWord(d.view).word).toBe('Hit a ball');
  });

  it('leads through the calibration and says when it was refused', () => {
    const d = draft();
    expect(stageWord(d.view).word).toBe('Stand still');
    takeEvent(d, { type: 'calibration-stand', onsetS: 0, durationS: 3, value: null });
    expect(stageWord(d.view).word).toBe('Bow 3 times');
    const poor = { explained: 0.9, spreadDeg: 8, squarenessDeg: 3 };
    takeOutput(d, {
      kind: 'calibration',
      fits: null,
      quality: {
        accepted: false,
        problems: [{ code: 'axis-unclear', message: 'Bow again.', refuses: true }],
        chest: poor,
        trailArm: poor,
      },
    });
    expect(stageWord(d.view)).toMatchObject({ word: 'Calibration', mood: 'rest' });
  });

  it('says the end when nothing more comes', () => {
    const d = draft();
    setSection(d, 'source', { ...d.view.source, state: 'ended' });
    expect(stageWord(d.view).word).toBe('Finished');
  });
});

describe('the rows of measures', () => {
  it('show a rehearsal as judged, hold first', () => {
    const rows = measureRows(rehearsal(1, { holdS: 0.4 }), DEFAULT_PLAN);
    expect(rows[0]).toMatchObject({ measure: 'holdS', value: 0.4, passed: false });
    expect(rows).toHaveLength(7);
  });

  it('show a ball beside the targets without judging it, and leave out what a ball has not', () => {
    const rows = measureRows(ball(1), DEFAULT_PLAN);
    expect(rows.map((r) => r.measure)).not.toContain('holdS');
    expect(rows.map((r) => r.measure)).not.toContain('releaseToCatchMs');
    expect(rows.every((r) => r.passed === null)).toBe(true);
  });

  it('keep every value on its scale', () => {
    expect(place(SCALES.holdS, 99)).toBe(100);
    expect(place(SCALES.leanChangeDeg, -99)).toBe(0);
    expect(place(SCALES.turnTowardTargetDeg, 45)).toBe(50);
  });
});

describe('what a browser remembers', () => {
  it('takes known choices and leaves damaged ones', () => {
    expect(readPrefs('{"far":true,"volume":7,"theme":"pink","x":1}')).toMatchObject({
      far: true,
      volume: 0.8,
      theme: 'system',
    });
    for (const bad of [null, '', '{', '7', '[]', 'null']) {
      expect(readPrefs(bad).volume).toBe(0.8);
    }
  });

  it('leaves the screen to the practice where the address names none', () => {
    expect(routeOf('#/safety')).toBe('safety');
    for (const hash of ['', '#', '#/nowhere', '#/constructor']) {
      expect(routeOf(hash)).toBeNull();
    }
    expect(screenFor('', 'practice')).toBe('practice');
    expect(screenFor('#/practice', 'strap')).toBe('ready');
    expect(screenFor('#/ready', 'after')).toBe('after');
    expect(screenFor('#/today', 'after')).toBe('today');
  });

  it('opens on Today where nobody has begun a practice, or it is over', () => {
    for (const stage of ['idle', 'over', 'stopped', null] as const)
      expect(screenFor('', stage), `${stage}`).toBe('today');
    for (const hash of ['#/practice', '#/ready', '#/after'])
      expect(screenFor(hash, 'idle')).toBe('today');
    expect(screenFor('#/after', 'over')).toBe('after');
    expect(screenFor('#/practice', null)).toBe('practice');
  });
});
