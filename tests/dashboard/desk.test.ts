import { describe, expect, it } from 'vitest';
import { DEFAULT_PLAN } from '../../src/coaching/plan.ts';
import { warningOf } from '../../src/coaching/warnings.ts';
import { soundDesk } from '../../src/dashboard/sound/desk.ts';
import {
  SOFT_START_MS,
  TONES,
  type ToneName,
  toneLengthMs,
} from '../../src/dashboard/sound/tones.ts';
import { newDraft, setSection, takeEvent, takeOutput } from '../../src/practice/reduce.ts';
import type { GuideView } from '../../src/practice/guide/guide.ts';
import type { PracticeView } from '../../src/practice/view.ts';
import type { SessionEventType } from '../../src/sensors/sessionEvent.ts';
import { ball, link, phase, rehearsal } from '../practice/scripted.ts';

interface Heard {
  readonly atMs: number;
  readonly what: 'tone' | 'speech' | 'cut';
  readonly name: string;
}

/** A loudspeaker that writes down what it was given, on a clock turned by hand. */
function recorder(settings = { muted: false, volume: 0.8, rate: 1 }, speechMs = 900) {
  const heard: Heard[] = [];
  const captions: (string | null)[] = [];
  let nowMs = 0;
  let timers: { readonly dueMs: number; readonly call: () => void }[] = [];
  let endSpeech: (() => void) | null = null;
  const later = (call: () => void, ms: number): void =>
    void timers.push({ dueMs: nowMs + ms, call });
  const desk = soundDesk({
    tones: {
      play: (name, volume) => {
        if (volume > 0) heard.push({ atMs: nowMs, what: 'tone', name });
        return toneLengthMs(name);
      },
    },
    speaker: {
      speak: (name) => {
        heard.push({ atMs: nowMs, what: 'speech', name });
        return new Promise((resolve) => {
          endSpeech = resolve;
          later(resolve, speechMs);
        });
      },
      cancel: () => {
        heard.push({ atMs: nowMs, what: 'cut', name: '' });
        endSpeech?.();
      },
    },
    settings: () => settings,
    caption: (words) => captions.push(words),
    later,
  });
  const pass = async (ms: number): Promise<void> => {
    const endMs = nowMs + ms;
    for (;;) {
      // promises settle before the next timer is due
      for (let i = 0; i < 5; i++) await Promise.resolve();
      const next = timers.sort((a, b) => a.dueMs - b.dueMs)[0];
      if (next === undefined || next.dueMs > endMs) break;
      timers = timers.filter((t) => t !== next);
      nowMs = next.dueMs;
      next.call();
    }
    nowMs = endMs;
  };
  return { desk, heard, captions, pass, said: () => heard.map(({ what, name }) => [what, name]) };
}

function practice() {
  const draft = newDraft(
    'p1',
    { hand: 'right', plan: DEFAULT_PLAN },
    { kind: 'synthetic', simulated: true },
  );
  const view = (): PracticeView => ({ ...draft.view });
  return { draft, view };
}

const outputs = {
  passed: (i: number) => ({ kind: 'repetition', others: [], repetition: rehearsal(i) }) as const,
  failed: (i: number) =>
    ({ kind: 'repetition', others: [], repetition: rehearsal(i, { holdS: 0.5 }) }) as const,
  ball: (i: number) => ({ kind: 'repetition', others: [], repetition: ball(i) }) as const,
};

describe('tones', () => {
  it('are short, start softly and differ in rhythm, not only in pitch', () => {
    const names = Object.keys(TONES) as ToneName[];
    for (const name of names) expect(toneLengthMs(name), name).toBeLessThanOrEqual(250);
    expect(SOFT_START_MS).toBeGreaterThanOrEqual(5);
    const rhythm = (name: ToneName): string =>
      TONES[name].map((n) => `${n.atMs}+${n.lengthMs}`).join(' ');
    const sameRhythm = names.filter((a) => names.some((b) => a !== b && rhythm(a) === rhythm(b)));
    // passed and not passed are one pair: two up against two down
    expect(sameRhythm.sort()).toEqual(['notPassed', 'passed']);
  });
});

describe('the sound desk', () => {
  it('sounds the tone first and speaks the cue after it', async () => {
    const { desk, heard, pass } = recorder();
    const { draft, view } = practice();
    desk.take(view());
    takeOutput(draft, phase('caught', 3));
    takeOutput(draft, outputs.failed(1));
    desk.take(view());
    await pass(2000);
    expect(heard).toEqual([
      { atMs: 0, what: 'tone', name: 'notPassed' },
      { atMs: toneLengthMs('notPassed') + 40, what: 'speech', name: 'Hold longer at the top.' },
    ]);
  });

  it('gives exactly one cue for a repetition, however often its view comes', async () => {
    const { desk, said, pass } = recorder();
    const { draft, view } = practice();
    desk.take(view());
    takeOutput(draft, outputs.failed(1));
    for (let i = 0; i < 5; i++) {
      desk.take(view());
      await pass(400);
    }
    takeOutput(draft, outputs.failed(1));
    desk.take(view());
    await pass(2000);
    expect(said().filter(([what]) => what === 'speech')).toHaveLength(1);
  });

  it('never speaks during the way to the top, the hold or the release', async () => {
    const { desk, heard, pass } = recorder();
    const { draft, view } = practice();
    desk.take(view());
    takeOutput(draft, phase('top', 2, 0.4));
    desk.take(view());
    takeOutput(draft, { kind: 'warning', warning: warningOf('volume', 2) });
    desk.take(view());
    await pass(3000);
    takeOutput(draft, phase('released', 5));
    desk.take(view());
    await pass(300);
    expect(heard).toEqual([]);
    takeOutput(draft, phase('caught', 5.4));
    desk.take(view());
    await pass(2000);
    expect(heard.map(({ what }) => what)).toEqual(['tone', 'speech']);
  });

  it('confirms a pause and its end by voice, whoever asked for it', async () => {
    const { desk, heard, captions, pass } = recorder();
    const { draft, view } = practice();
    desk.take(view());
    takeOutput(draft, phase('paused', 3));
    desk.take(view());
    desk.take(view());
    await pass(2000);
    takeOutput(draft, phase('waiting', 6));
    desk.take(view());
    await pass(2000);
    expect(heard.filter(({ what }) => what === 'speech').map(({ name }) => name)).toEqual([
      'Paused.',
      'Resumed.',
    ]);
    expect(captions).toEqual(['Paused.', 'Resumed.']);
  });

  it('cuts speech short where the golfer starts the next swing', async () => {
    const { desk, said, pass } = recorder(undefined, 3000);
    const { draft, view } = practice();
    desk.take(view());
    takeOutput(draft, outputs.passed(1));
    desk.take(view());
    await pass(600);
    takeOutput(draft, phase('backswing', 5));
    desk.take(view());
    await pass(100);
    expect(said().map(([what]) => what)).toEqual(['tone', 'speech', 'cut']);
  });

  it('says a warning after the swing that came between its tone and its words', async () => {
    const { desk, said, pass } = recorder();
    const { draft, view } = practice();
    desk.take(view());
    takeOutput(draft, { kind: 'warning', warning: warningOf('missed', 2) });
    desk.take(view());
    takeOutput(draft, phase('backswing', 5));
    desk.take(view());
    await pass(1000);
    takeOutput(draft, phase('caught', 8));
    desk.take(view());
    await pass(1000);
    const speeches = said().filter(([what]) => what === 'speech');
    expect(speeches).toEqual([['speech', warningOf('missed', 0).text]]);
  });

  it('sounds that the hold is long enough once, in the hold, and without words', async () => {
    const { desk, said, pass } = recorder();
    const { draft, view } = practice();
    desk.take(view());
    for (const holdS of [0.2, 0.9, 0.99, 1.01, 1.3, 1.8]) {
      takeOutput(draft, phase('top', 4, holdS));
      desk.take(view());
    }
    await pass(500);
    expect(said()).toEqual([['tone', 'holdReached']]);
  });

  it('knocks and says so when a ball is due, after the cue', async () => {
    const { desk, said, pass } = recorder();
    const { draft, view } = practice();
    takeOutput(draft, outputs.passed(1));
    desk.take(view());
    takeOutput(draft, outputs.passed(2));
    desk.take(view());
    await pass(5000);
    expect(said().map(([what, name]) => (what === 'tone' ? name : what))).toEqual([
      'passed',
      'speech',
      'ballNext',
      'speech',
    ]);
    expect(said().at(-1)?.[1]).toBe('Hit a ball.');
  });

  it('says gently that a ball came too early, and gives a ball no cue', async () => {
    const { desk, said, pass } = recorder();
    const { draft, view } = practice();
    desk.take(view());
    takeOutput(draft, outputs.ball(1));
    desk.take(view());
    await pass(3000);
    expect(said()).toEqual([['speech', 'That ball was too early. First 2 rehearsals.']]);
  });

  it('puts a warning before everything else that waits', async () => {
    const { desk, said, pass } = recorder();
    const { draft, view } = practice();
    desk.take(view());
    takeOutput(draft, outputs.failed(1));
    takeOutput(draft, { kind: 'warning', warning: warningOf('missed', 2) });
    desk.take(view());
    await pass(5000);
    expect(said().map(([, name]) => name)).toEqual([
      'warning',
      warningOf('missed', 0).text,
      'notPassed',
      'Hold longer at the top.',
    ]);
  });

  it('says which sensor was lost and that it is back', async () => {
    const { desk, said, pass } = recorder();
    const { draft, view } = practice();
    const sensor = (state: 'streaming' | 'lost') => [
      { ...link('chest', { state }), rateHz: 100, lostPct: 0, ageMs: 5, restNorm: 9.81 },
    ];
    setSection(draft, 'sensors', sensor('streaming'));
    desk.take(view());
    setSection(draft, 'sensors', sensor('lost'));
    desk.take(view());
    await pass(2000);
    setSection(draft, 'sensors', sensor('streaming'));
    desk.take(view());
    await pass(2000);
    expect(said()).toEqual([
      ['tone', 'sensorLost'],
      ['speech', 'Chest sensor lost.'],
      ['tone', 'listening'],
      ['speech', 'Chest sensor is back.'],
    ]);
  });

  it('speaks each calibration step and what came of it', async () => {
    const { desk, said, pass } = recorder();
    const { draft, view } = practice();
    desk.take(view());
    const steps: SessionEventType[] = [
      'calibration-stand',
      'calibration-bow',
      'calibration-armRaise',
    ];
    for (const type of steps) {
      takeEvent(draft, { type, onsetS: 0, durationS: 3, value: null });
      desk.take(view());
      await pass(3000);
    }
    const spoken = said().flatMap(([what, name]) => (what === 'speech' ? [name] : []));
    expect(spoken.map((words) => words?.split('.')[0])).toEqual([
      'Bow 3 times',
      'Raise arm',
      'Stand still',
    ]);
  });

  it('leads through the guided start: asks, ticks for each bow, helps where nothing comes', async () => {
    const { desk, said, pass } = recorder();
    const { draft, view } = practice();
    setSection(draft, 'stage', 'calibrate');
    const bow = (change: Partial<GuideView>): GuideView => ({
      part: 'calibrate',
      step: 'bow',
      index: 1,
      of: 4,
      status: 'watching',
      count: 0,
      wanted: 3,
      progress: 0,
      endDeg: null,
      ...change,
    });
    desk.take(view());
    for (const change of [
      { status: 'asked' },
      { count: 1 },
      { count: 2 },
      { status: 'slow' },
    ] as const) {
      setSection(draft, 'guide', bow({ count: 0, ...change }));
      desk.take(view());
      await pass(3000);
    }
    expect(said()).toEqual([
      ['tone', 'listening'],
      ['speech', 'Bow 3 times. Three slow bows from the hips, 30 to 60 degrees.'],
      ['tone', 'listening'],
      ['tone', 'listening'],
      ['speech', expect.stringMatching(/^Movement not detected/)],
    ]);
  });

  it('keeps silent when muted and still shows every word', async () => {
    const { desk, heard, captions, pass } = recorder({ muted: true, volume: 1, rate: 1 });
    const { draft, view } = practice();
    desk.take(view());
    takeOutput(draft, outputs.failed(1));
    desk.take(view());
    await pass(3000);
    expect(heard).toEqual([]);
    expect(captions).toEqual(['Hold longer at the top.']);
  });

  it('takes what it said, and was about to say, of a practice away when another one begins', async () => {
    const { desk, captions, pass, said } = recorder();
    const { draft, view } = practice();
    desk.take(view());
    takeOutput(draft, outputs.failed(1));
    desk.take(view());
    await pass(600);
    expect(captions).toEqual(['Hold longer at the top.']);
    const other = practice();
    const another = (): PracticeView => ({ ...other.view(), practiceId: 'another' });
    desk.take(another());
    expect(captions.at(-1)).toBeNull();
    expect(said().at(-1)).toEqual(['cut', '']);
    await pass(5000);
    expect(captions).toHaveLength(2);
    takeOutput(other.draft, outputs.failed(1));
    desk.take(another());
    expect(captions.at(-1)).toBe('Hold longer at the top.');
    // The tone of the former one has sounded; its words are not said into the next.
    const third = { ...practice().view(), practiceId: 'third' };
    desk.take(third);
    await pass(5000);
    expect(said().filter(([what]) => what === 'speech')).toHaveLength(1);
    expect(captions.at(-1)).toBeNull();
  });

  it('says nothing about the past of a practice that it joins', async () => {
    const { desk, heard, pass } = recorder();
    const { draft, view } = practice();
    takeOutput(draft, outputs.failed(1));
    takeOutput(draft, { kind: 'warning', warning: warningOf('missed', 2) });
    desk.take(view());
    desk.take({ ...view(), practiceId: 'another' });
    await pass(2000);
    expect(heard).toEqual([]);
  });
});
