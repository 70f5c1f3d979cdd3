import { describe, expect, it } from 'vitest';
import type { AnalysisOutput } from '../../src/analysis/contract.ts';
import { DEFAULT_PLAN } from '../../src/coaching/plan.ts';
import { warningOf } from '../../src/coaching/warnings.ts';
import { type FeedState, NOTHING_YET } from '../../src/dashboard/feed/state.ts';
import { soundDesk } from '../../src/dashboard/sound/desk.ts';
import {
  SOFT_START_MS,
  TONES,
  type ToneName,
  toneLengthMs,
} from '../../src/dashboard/sound/tones.ts';
import {
  acknowledge,
  newDraft,
  setSection,
  takeEvent,
  takeOutput,
} from '../../src/practice/reduce.ts';
import type { GuideView } from '../../src/practice/guide/guide.ts';
import type { PracticeView } from '../../src/practice/view.ts';
import type { SessionEventType } from '../../src/sensors/sessionEvent.ts';
import { catchTimeS } from '../../src/swings/repetition.ts';
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
  const sound = soundDesk({
    now: () => nowMs,
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
  let state: FeedState = { ...NOTHING_YET, connection: 'live' };
  const take = (change: Partial<FeedState>): void => {
    state = { ...state, ...change };
    sound.take(state);
  };
  /** A message that comes at once; its repetition was caught just now unless the clock says otherwise. */
  const come = (
    kind: 'batch' | 'snapshot',
    view: PracticeView,
    sessionS = lastS(view),
    lateMs = 0,
  ): void => take({ view, arrival: { kind, lateMs, sessionS } });
  const desk = { take: (view: PracticeView, sessionS?: number) => come('batch', view, sessionS) };
  return {
    desk,
    take,
    come,
    heard,
    captions,
    pass,
    said: () => heard.map(({ what, name }) => [what, name]),
  };
}

/** Session s of the newest catch. */
const lastS = ({ last }: PracticeView): number =>
  last?.kind === 'rehearsal' ? catchTimeS(last) : 0;

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
    takeOutput(draft, outputs.failed(2));
    desk.take(view());
    await pass(5000);
    expect(said().map(([what, name]) => (what === 'tone' ? name : what))).toEqual([
      'notPassed',
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

  it('says nothing about the past of a practice that it joins, but the warning that stands', async () => {
    const { desk, said, pass } = recorder();
    const { draft, view } = practice();
    takeOutput(draft, outputs.failed(1));
    takeOutput(draft, { kind: 'warning', warning: warningOf('volume', 1) });
    acknowledge(draft, 'volume', 1.5);
    takeOutput(draft, { kind: 'warning', warning: warningOf('missed', 2) });
    desk.take(view());
    await pass(9000);
    desk.take(view());
    await pass(9000);
    expect(said()).toEqual([
      ['tone', 'warning'],
      ['speech', warningOf('missed', 0).text],
    ]);
  });
});

describe('a message that comes late or in one piece', () => {
  const CALIBRATED = {
    kind: 'calibration',
    quality: { accepted: true, problems: [], axisSharePct: 99 },
  } as unknown as AnalysisOutput;

  it('announces nothing by itself: a snapshot of the same state is silent', async () => {
    const { come, heard, pass } = recorder();
    const { draft, view } = practice();
    takeOutput(draft, CALIBRATED);
    takeOutput(draft, outputs.passed(1));
    come('snapshot', view());
    for (const kind of ['snapshot', 'batch', 'snapshot'] as const) {
      come(kind, structuredClone(view()));
      await pass(5000);
    }
    expect(heard).toEqual([]);
  });

  it('says nothing of what changed in a snapshot: step, ball, pause, sensor, hold', async () => {
    const { come, heard, pass } = recorder();
    const { draft, view } = practice();
    come('snapshot', view());
    takeOutput(draft, CALIBRATED);
    takeOutput(draft, phase('paused', 3));
    takeOutput(draft, outputs.passed(1));
    takeOutput(draft, outputs.passed(2));
    come('snapshot', view(), lastS(view()) + 4);
    await pass(9000);
    expect(heard).toEqual([]);
  });

  it.each([
    [1.5, 2],
    [2.9, 0],
    [3.1, 0],
  ])('speaks a verdict once where its catch is %f s ago', async (agoS, times) => {
    const { come, heard, pass } = recorder();
    const { draft, view } = practice();
    come('snapshot', view());
    takeOutput(draft, outputs.failed(1));
    come('snapshot', view(), lastS(view()) + agoS);
    await pass(4000);
    come('batch', view());
    await pass(4000);
    expect(heard).toHaveLength(times);
  });

  it('counts the time that a message lay in the page', async () => {
    const { come, heard, pass } = recorder();
    const { draft, view } = practice();
    come('snapshot', view());
    takeOutput(draft, outputs.failed(1));
    come('batch', view(), lastS(view()) + 0.5, 2800);
    await pass(4000);
    expect(heard).toEqual([]);
  });

  it('lets a cue go that would have to wait too long, and says the next one', async () => {
    const { come, said, pass } = recorder(undefined, 5000);
    const { draft, view } = practice();
    come('snapshot', view());
    takeOutput(draft, outputs.failed(1));
    come('batch', view());
    await pass(1000);
    takeOutput(draft, outputs.failed(2));
    come('batch', view());
    await pass(9000);
    takeOutput(draft, outputs.passed(3));
    come('batch', view());
    await pass(9000);
    expect(said().map(([, name]) => name)).toEqual([
      'notPassed',
      'Hold longer at the top.',
      'ballNext',
      'Hit a ball.',
      'passed',
      'Good. Keep that.',
    ]);
  });

  it('speaks a warning that came in a snapshot before all else, and one that a swing cut short again', async () => {
    const { come, heard, said, pass } = recorder(undefined, 3000);
    const { draft, view } = practice();
    come('snapshot', view());
    takeOutput(draft, outputs.failed(1));
    takeOutput(draft, { kind: 'warning', warning: warningOf('missed', 2) });
    come('snapshot', view());
    await pass(1000);
    takeOutput(draft, phase('top', 5));
    come('batch', view());
    await pass(9000);
    takeOutput(draft, phase('caught', 8));
    come('batch', view());
    await pass(9000);
    const { text } = warningOf('missed', 0);
    expect(heard.map(({ what }) => what)).toEqual(['tone', 'speech', 'cut', 'speech']);
    expect(said().filter(([what]) => what === 'speech')).toEqual([
      ['speech', text],
      ['speech', text],
    ]);
  });
});

describe('praise and rest', () => {
  const wordsAfter = async (passes: readonly boolean[], goal = 60) => {
    const { come, said, captions, pass } = recorder();
    const draft = newDraft(
      'p1',
      { hand: 'right', plan: { ...DEFAULT_PLAN, volume: { perSession: goal, perWeek: 200 } } },
      { kind: 'synthetic', simulated: true },
    );
    come('snapshot', { ...draft.view });
    for (const [i, passed] of passes.entries()) {
      takeOutput(draft, passed ? outputs.passed(i + 1) : outputs.failed(i + 1));
      come('batch', { ...draft.view });
      await pass(9000);
    }
    const spoken = said().flatMap(([what, name]) => (what === 'speech' ? [name] : []));
    return { spoken: spoken.filter((s) => s !== 'Hit a ball.'), said: said(), captions };
  };

  it('uses words for the first pass and each third in a row, the tone alone for the others', async () => {
    const { spoken, said, captions } = await wordsAfter([...Array<boolean>(7).fill(true)]);
    expect(said.filter(([, name]) => name === 'passed')).toHaveLength(7);
    expect(spoken).toEqual(['That was right.', 'Good. 3 in a row.', 'Good. 6 in a row.']);
    // The words of the one before do not stand beside a pass that has none.
    expect(captions.slice(-1)).toEqual([null]);
  });

  it('speaks every cue about a fault, and praises a row that begins again at its third', async () => {
    const { spoken } = await wordsAfter([true, false, true, true, false, true, true, true]);
    expect(spoken).toEqual([
      'That was right.',
      'Hold longer at the top.',
      'Hold longer at the top.',
      'Good. 3 in a row.',
    ]);
  });

  it('praises the last pass of the goal, and reminds once of a rest at half of it', async () => {
    const { spoken } = await wordsAfter([true, false, true, true, true, false, true], 7);
    expect(spoken).toEqual([
      'That was right.',
      'Hold longer at the top.',
      'Half done. Take a short rest.',
      'Good. 3 in a row.',
      'Hold longer at the top.',
      'Good. Keep that.',
    ]);
  });
});

describe('a service that is gone', () => {
  it('is said with a tone of its own, during a hold too, and that it is back', async () => {
    const { come, take, said, captions, pass } = recorder();
    const { draft, view } = practice();
    takeOutput(draft, phase('top', 5));
    come('snapshot', view());
    take({ connection: 'lost' });
    take({ connection: 'lost' });
    await pass(3000);
    take({ connection: 'live' });
    takeOutput(draft, phase('waiting', 7));
    come('snapshot', view());
    await pass(3000);
    expect(said()).toEqual([
      ['tone', 'connectionLost'],
      ['speech', 'Connection lost.'],
      ['tone', 'listening'],
      ['speech', 'Connected again.'],
    ]);
    expect(captions).toEqual(['Connection lost.', 'Connected again.']);
  });

  it('and comes back as another one says that the practice was interrupted, and nothing of what runs now', async () => {
    const { come, take, said, pass } = recorder();
    const { draft, view } = practice();
    come('snapshot', view());
    take({ connection: 'lost' });
    await pass(3000);
    const other = practice();
    const another = (): PracticeView => ({ ...other.view(), practiceId: 'another' });
    take({ connection: 'live', interrupted: { sessionId: 's1' }, view: another() });
    await pass(3000);
    takeOutput(other.draft, outputs.failed(1));
    come('batch', another());
    await pass(3000);
    expect(said().slice(2)).toEqual([
      ['tone', 'listening'],
      ['speech', 'Your practice was interrupted.'],
    ]);
    take({ interrupted: null });
    takeOutput(other.draft, outputs.failed(2));
    come('batch', another());
    await pass(3000);
    expect(said()).toContainEqual(['speech', 'Hold longer at the top.']);
    expect(draft.view.last).toBeNull();
  });
});
