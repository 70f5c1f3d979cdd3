import { describe, expect, it } from 'vitest';
import { CALIBRATION_TEXTS, CALIBRATION_WORDS } from '../../../src/body/calibrationTexts.ts';
import { CUE_TEXTS } from '../../../src/coaching/cues.ts';
import { FIELD_TEXTS } from '../../../src/coaching/jsonReader.ts';
import { drifts } from '../../../src/coaching/drift.ts';
import { NEED_TEXTS, WARNING_NEEDS } from '../../../src/coaching/needTexts.ts';
import { planChanges } from '../../../src/coaching/planChanges.ts';
import type { CueCode, WarningId } from '../../../src/coaching/judgement.ts';
import { MEASURE_KEYS } from '../../../src/coaching/measureInfo.ts';
import { DEFAULT_PLAN } from '../../../src/coaching/plan.ts';
import { PAIN_SIGNS, RED_FLAGS, SAFETY_TEXTS } from '../../../src/coaching/safetyTexts.ts';
import { validatePlan } from '../../../src/coaching/validatePlan.ts';
import { voiceFor } from '../../../src/dashboard/sound/speaker.ts';
import { LINK } from '../../../src/dashboard/strings/de/link.ts';
import { API_TEXTS } from '../../../src/streaming/apiTexts.ts';
import { FIELD_REFUSALS } from '../../../src/streaming/fieldRefusals.ts';
import { HUB_LINK_TEXTS } from '../../../src/streaming/hubContract/linkTexts.ts';
import { de } from '../../../src/dashboard/strings/de.ts';
import * as api from '../../../src/dashboard/strings/de/api.ts';
import * as books from '../../../src/dashboard/strings/de/books.ts';
import { DISK, KEEPING } from '../../../src/dashboard/strings/de/keeping.ts';
import * as radio from '../../../src/dashboard/strings/de/radio.ts';
import { en } from '../../../src/dashboard/strings/en.ts';
import { hubDe } from '../../../src/dashboard/strings/hubDe.ts';
import { hubEn } from '../../../src/dashboard/strings/hubEn.ts';
import { chooseLanguage } from '../../../src/dashboard/strings/language.ts';
import { DISK_TEXTS, KEEPING_TEXTS } from '../../../src/practice/keepingTexts.ts';
import { REFUSALS } from '../../../src/practice/refusals.ts';
import { radioProblem } from '../../../src/sensors/sources/ble/problem.ts';
import * as texts from '../../../src/sensors/sources/radioTexts.ts';
import { type SentenceBook, fill, recognise } from '../../../src/sensors/sentence.ts';

type Leaf = string | number | boolean | null | ((...args: never[]) => unknown);

/** Every text and function of a dictionary by its path. */
function leaves(tree: unknown, path = ''): Map<string, Leaf> {
  if (typeof tree !== 'object' || tree === null) return new Map([[path, tree as Leaf]]);
  return new Map(
    Object.entries(tree).flatMap(([key, value]) => [
      ...leaves(value, path === '' ? key : `${path}.${key}`),
    ]),
  );
}

const english = leaves({ ...en, hub: hubEn });
const german = leaves({ ...de, hub: hubDe });

/** Names, units, and words that are the same in both languages. */
const SAME = new Set([
  'product',
  'nav.plan',
  'nav.coach',
  'coach.title',
  'ready.optional',
  'ledger.noRatio',
  'ready.check.well',
  'coach.sending.share',
  'planPage.title',
  'sessions.states.complete',
  'sessions.at',
  'sessions.length',
  'after.median',
  'review.head.n',
  'review.strip.name',
  'review.strip.plus',
  'review.filter.one',
  'review.repetition.time',
  'review.repetition.value',
  'review.compare.option',
  'progress.at',
  'plan.deg',
  'secondScreen.card',
  'secondScreen.pair.code',
  'desk.heard',
  'desk.rate',
  'desk.dbm',
  'after.facts',
  'desk.ofHz',
  'desk.percent',
  'hub.comparison.percent',
  'desk.residual',
  'desk.signal',
  'hold.target',
  'verdict.ball',
  'ledger.entry.ball',
  'help.student.verdict.body.1.terms.1.0',
  'help.coach.people.body.0.terms.1.0',
  'sensors.rateOnly',
  'sensors.silentFor',
  'look.pause',
  'curves.flexion',
  'review.repetition.names.flexionDeg',
  'measures.plusMinus',
  'hub.shell.title',
  'hub.shell.nav.club',
  'hub.entry.account.role.coach',
  'hub.entry.pairing.code',
  'hub.needs.invite.link',
  'hub.student.plan.title',
  'hub.student.plan.now',
  'hub.student.plan.again_of',
  'hub.student.edit.name',
  'hub.session.offset',
  'hub.session.title',
  'hub.session.comments.by',
  'hub.session.comments.role.coach',
  'hub.session.clips.title',
  'hub.session.clips.size',
  'hub.report.plan',
  'hub.report.last',
  'hub.report.carry',
  'hub.report.saidBy',
  'hub.report.accuracyLine',
  'hub.club.title',
  'hub.club.coaches',
  'hub.club.invites.line',
  'hub.club.invites.role.coach',
  'hub.club.texts.name',
  'hub.club.texts.text',
]);
/** The same however they are said: numbers, units, keys of a keyboard. */
const isMark = (text: string): boolean => !/[A-Za-zÄÖÜäöüß]{2,}/.test(text.replace(/\bms\b/g, ''));
const NEUTRAL = [
  /^date\./,
  /^decimal$/,
  /^unit\./,
  /^progress\.days\.weekdays\./,
  /^look\.keyList\.\d+\.0$/,
  /^measures\.info\.\w+\.(unit|better)$/,
  /^names\.stages\.\w+/,
  /^hub\.session\.formats\.\d+\.0$/,
  /^hub\.shell\.keyList\.\w+\.\d+\.0$/,
];

const BROKEN = /NaN|[uU]ndefined/;

/** What a function says of such arguments; `null` where it takes others. */
function saidOf(leaf: Leaf | undefined, argument: unknown): unknown {
  if (typeof leaf !== 'function') return leaf;
  try {
    return leaf(...(Array.from({ length: leaf.length }, () => argument) as never[]));
  } catch {
    return null;
  }
}

describe('the German dictionary', () => {
  it('has every text of the English one and no other', () => {
    expect([...german.keys()].sort()).toEqual([...english.keys()].sort());
  });

  it('takes the same arguments', () => {
    for (const [path, leaf] of english) {
      const other = german.get(path);
      expect(typeof other, path).toBe(typeof leaf);
      if (typeof leaf === 'function' && typeof other === 'function')
        expect(other.length, path).toBe(leaf.length);
    }
  });

  it('leaves nothing empty, broken or in English', () => {
    for (const [path, leaf] of english) {
      for (const argument of [0, 1, 2, 'address', 'ball']) {
        const [a, b] = [saidOf(leaf, argument), saidOf(german.get(path), argument)];
        if (typeof a !== 'string' || typeof b !== 'string') continue;
        if (a.includes('Invalid Date')) continue;
        if (a !== '') expect(b.trim(), path).not.toBe('');
        if (!BROKEN.test(a)) expect(b, path).not.toMatch(BROKEN);
        const same = SAME.has(path) || NEUTRAL.some((p) => p.test(path)) || isMark(a);
        if (!same && a !== String(argument)) expect(b, `${path} is left in English`).not.toBe(a);
      }
    }
  });

  it.each([
    ['ledger.rehearsals', 1, '1 Übung'],
    ['ledger.balls', 1, '1 Ball'],
    ['ledger.balls', 2, '2 Bälle'],
    ['progress.warnings', 1, '1 Warnung'],
    ['review.few', 1, 'Nur 1 Wiederholung: Sieh sie an; Mediane sind nicht verlässlich.'],
    ['after.cueTimes', 1, 'einmal'],
  ])('bends %s of %s', (path, n, text) => {
    expect(saidOf(german.get(path), n)).toBe(text);
  });

  it('writes a decimal comma and a minus sign', () => {
    expect(de.decimal(-1.25, 1)).toBe(`−${(1.25).toFixed(1).replace('.', ',')}`);
    expect(en.decimal(-1.25, 1)).toBe(`−${(1.25).toFixed(1)}`);
    expect(de.measures.value('holdS', 1.04)).toBe('1,0 s');
    expect(de.measures.target('holdS', { min: 0.5, max: 1.5 })).toBe('von 0,5 bis 1,5 s');
    expect(de.measures.value('leanChangeDeg', -3)).toBe('−3°');
    expect(de.measures.plusMinus('holdS', 0.04)).toBe('±0,04 s');
    expect(de.measures.value('chestLeadMs', 5)).toBe('gleichzeitig');
    expect(de.measures.value('holdS', null)).toBe('nicht gemessen');
    expect(de.written('-0.5')).toBe('−0,5');
  });

  it('bends by two numbers', () => {
    expect(de.after.mixKept(1, 4)).toBe('1 von 4 Bällen nach genug Übungen');
    expect(en.after.mixKept(0, 1)).toBe('0 of 1 ball came after enough rehearsals');
    expect(en.today.plan(1, 1, '1.0 s')).toBe('1 rehearsal, then a ball. Hold the top for 1.0 s.');
    expect(en.today.last('Monday', 1)).toBe('Last time: Monday, 1 repetition.');
  });
});

const BOOKS: readonly [string, SentenceBook, SentenceBook][] = [
  ['cues', CUE_TEXTS, books.CUES],
  ['calibration', CALIBRATION_TEXTS, books.CALIBRATION],
  ['refusals', REFUSALS, books.REFUSALS],
  ['keeping', KEEPING_TEXTS, KEEPING],
  ['disk', DISK_TEXTS, DISK],
  ['fields', FIELD_TEXTS, books.FIELDS],
  ['connection with a hub', HUB_LINK_TEXTS, LINK],
  ['Bluetooth problems', texts.PROBLEM_TEXTS, radio.PROBLEMS],
  ['steps to mend them', texts.MEND_TEXTS, radio.MENDS],
  ['links', texts.LINK_TEXTS, radio.LINKS],
  ['sensors page', texts.DESK_TEXTS, radio.DESK],
  ['kinds of sensors', texts.KIND_TEXTS, radio.KINDS],
  ['refused requests', API_TEXTS, api.API],
  ['refused fields', FIELD_REFUSALS, api.FIELD_REASONS],
];

const namesIn = (sentence: string): string[] =>
  [...sentence.matchAll(/\{(\w+)\}/g)].map((m) => m[1] ?? '').sort();

describe('what the hub says', () => {
  it('is German where a student needs the coach, for every reason', () => {
    for (const sentence of [...Object.values(NEED_TEXTS), ...Object.values(WARNING_NEEDS)]) {
      const values = Object.fromEntries(namesIn(sentence).map((name) => [name, '7']));
      const english = fill(sentence, values);
      expect(de.said.need(english), english).not.toBe(english);
    }
    expect(
      de.said.need('Pain warning. Rated pain 4 of 10. Sessions with pain that are open: 2.'),
    ).toBe('Schmerzwarnung. Schmerz mit 4 von 10 angegeben. Trainings mit offenem Schmerz: 2.');
  });

  it('is German where a measure drifts', () => {
    const target = DEFAULT_PLAN.targets.holdS;
    const session = (median: number) => ({ rehearsals: { holdS: { count: 9, median } } });
    const recent = [0.5, 0.5, 0.5, 1.2, 1.2, 1.2].map(session);
    const [drift] = drifts({ targets: { ...DEFAULT_PLAN.targets, holdS: target } }, recent);
    expect(de.said.need(drift!.text)).toBe(
      'Halten oben: 0,5 s in den letzten 3 Trainings (27 Übungen), Zielwert mindestens 1 s; 1,2 s in den 3 davor (27).',
    );
  });

  it('is German for every change of a plan', () => {
    const plan = {
      ...DEFAULT_PLAN,
      stage: 'movement' as const,
      targets: { ...DEFAULT_PLAN.targets, addedFlexionDeg: null, holdS: { min: 0.5, max: 1.5 } },
      ownRange: { flexionDeg: 60 },
      volume: { perSession: 40, perWeek: 200 },
      checklist: ['Breathe'],
      note: 'Slowly.',
    };
    const german = planChanges(DEFAULT_PLAN, plan).map((s) => de.said.planChange(s));
    expect(german).toEqual(de.said.planChanges(DEFAULT_PLAN, plan));
  });
});

describe('what the core says', () => {
  it.each(BOOKS)('stands in German for every sentence of the %s', (_, from, to) => {
    expect(Object.keys(to).sort()).toEqual(Object.keys(from).sort());
    for (const [key, sentence] of Object.entries(from)) {
      const other = to[key] ?? '';
      expect(other.trim(), key).not.toBe('');
      expect(other, key).not.toBe(sentence);
      for (const name of namesIn(other)) expect(namesIn(sentence), key).toContain(name);
    }
  });

  it.each(BOOKS)('is told apart from every other sentence of the %s', (_, from) => {
    for (const [key, sentence] of Object.entries(from)) {
      const values = Object.fromEntries(namesIn(sentence).map((name) => [name, `${name}.7`]));
      expect(recognise(from, fill(sentence, values))).toEqual({ key, values });
    }
  });

  it('says every cue in at most six words where the English is', () => {
    const count = (text: string): number => text.split(/\s+/).length;
    for (const [key, text] of Object.entries(CUE_TEXTS)) {
      const code = key.replace(/:.*$/, '') as CueCode;
      const german = de.said.cue({ code, text });
      expect(german, key).not.toBe(text);
      if (count(text) <= 6) expect(count(german), german).toBeLessThanOrEqual(6);
    }
  });

  it('knows an older wording by its code, and shows what it does not know as it came', () => {
    expect(de.said.cue({ code: 'hold-longer', text: 'Hold it.' })).toBe('Halte oben länger.');
    expect(de.said.cue({ code: 'new' as CueCode, text: 'Something new.' })).toBe('Something new.');
    expect(de.said.refusal('The disk is full.')).toBe('The disk is full.');
    expect(de.coach.said('The hub is not responding.')).toBe('Der Hub antwortet nicht.');
  });

  it.each(['linux', 'darwin', 'win32', 'freebsd'] as const)(
    'says every Bluetooth problem and each step to mend it on %s, commands as they are typed',
    (platform) => {
      for (const code of Object.keys(texts.PROBLEM_TEXTS) as texts.ProblemKey[]) {
        const { message, mend } = radioProblem(code, '', platform);
        expect(mend.length, code).toBeGreaterThan(0);
        for (const sentence of [message, ...mend.map(({ say }) => say)])
          expect(de.said.refusal(sentence), sentence).not.toBe(sentence);
        for (const { say, run } of mend) {
          const told = de.said.refusal(say);
          expect([say.endsWith(':'), told.endsWith(':')], say).toEqual([
            run !== null,
            run !== null,
          ]);
        }
      }
    },
  );

  it('says why a link ended without the system’s own words, in both languages', () => {
    const reason = `${texts.LINK_TEXTS['connect-refused']} (Unknown Connection Identifier (0x2))`;
    expect(texts.reasonParts(reason)).toEqual({
      sentence: texts.LINK_TEXTS['connect-refused'],
      detail: 'Unknown Connection Identifier (0x2)',
    });
    expect(en.said.link(reason)).toBe(texts.LINK_TEXTS['connect-refused']);
    expect(de.said.link(reason)).toBe(radio.LINKS['connect-refused']);
    expect(de.said.link('Something new (odd).')).toBe('Something new (odd).');
    expect(de.said.link(texts.PROBLEM_TEXTS.crashed)).toBe(radio.PROBLEMS.crashed);
  });

  it('says every warning, with the rating where there is one', () => {
    for (const id of Object.keys(SAFETY_TEXTS) as WarningId[]) {
      const text = fill(SAFETY_TEXTS[id].text, { pain: 4 });
      const told = de.said.warning({ id, text });
      expect(told, id).not.toBe(text);
      expect(told).not.toContain('{');
    }
    const text = fill(SAFETY_TEXTS['pain-now'].text, { pain: 5 });
    expect(de.said.warning({ id: 'pain-now', text })).toContain('mit 5 von 10');
  });

  it('puts the words of a calibration problem into German, numbers with a comma', () => {
    const text = fill(CALIBRATION_TEXTS['gravity-norm'], {
      sensor: 'trail arm sensor',
      norm: '9.52',
    });
    expect(de.said.calibration({ message: text })).toBe(
      'Der Armsensor misst in Ruhe 9,52 m/s² statt 9,81. Prüfe seine Maßeinheit und seinen Messbereich.',
    );
    expect(Object.keys(books.CALIBRATION_WORDS).sort()).toEqual([...CALIBRATION_WORDS].sort());
  });

  it('has every sign of pain, red flag and measure', () => {
    expect(Object.keys(de.ready.pain.signNames)).toEqual([...PAIN_SIGNS]);
    expect(de.ready.safety.redFlagList).toHaveLength(RED_FLAGS.length);
    expect(Object.keys(de.measures.info)).toEqual([...MEASURE_KEYS]);
  });

  it('reads the standard plan in German and leaves a person’s own words alone', () => {
    const own = { ...DEFAULT_PLAN, checklist: ['Breathe out'] };
    expect(de.said.plan(own).checklist).toEqual(['Breathe out']);
    const told = de.said.plan(DEFAULT_PLAN);
    for (const item of DEFAULT_PLAN.checklist) expect(told.checklist).not.toContain(item);
    expect(told.checklist).toHaveLength(DEFAULT_PLAN.checklist.length);
    expect(validatePlan(told).plan).toEqual(told);
  });

  it('says what is wrong with a field of a plan', () => {
    const { problems = [] } = validatePlan({ targets: { holdS: { min: 'x' } } });
    expect(problems.map((p) => de.said.field(p, 'Halten'))).toEqual([
      'Halten: eine Zahl von 0 bis 10 eingeben.',
    ]);
  });
});

describe('the choice of a language', () => {
  it('takes the first that the page speaks, else English', () => {
    expect(chooseLanguage([null, null, 'de-AT', 'en'], ['en', 'de'])).toBe('de');
    expect(chooseLanguage(['en', 'de'], ['en', 'de'])).toBe('en');
    expect(chooseLanguage(['fr', 'it'], ['en', 'de'])).toBe('en');
    expect(chooseLanguage(['de'], ['en'])).toBe('en');
    expect(chooseLanguage(['__proto__', ''], ['en', 'de'])).toBe('en');
  });

  it('speaks with a voice of the language only, one of this computer first', () => {
    const voice = (lang: string, localService = true) => ({ lang, localService, default: false });
    const far = voice('de-DE', false);
    const here = voice('de_AT');
    expect(voiceFor([voice('en-US'), far, here], 'de')).toBe(here);
    expect(voiceFor([voice('en-US'), far], 'de')).toBe(far);
    expect(voiceFor([voice('en-US')], 'de')).toBeNull();
    expect(voiceFor([], 'en')).toBeNull();
  });
});
