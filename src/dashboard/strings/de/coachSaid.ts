import { NEED_TEXTS, WARNING_NEEDS } from '../../../coaching/needTexts.ts';
import { measureLabel } from '../../../coaching/measureText.ts';
import { MEASURE_INFO, type MeasureKey } from '../../../coaching/measureInfo.ts';
import { STAGES as ENGLISH_STAGES } from '../../../coaching/plan.ts';
import { ENGLISH as ENGLISH_CHANGES } from '../../../coaching/planChanges.ts';
import { recognise } from '../../../sensors/sentence.ts';
import { translate } from '../translate.ts';
import { measureInfo } from './measures.ts';
import { VALUE_WORDS, writing } from './numbers.ts';
import { CHANGE_WORDS, STAGES } from './planWords.ts';

const WARNINGS: Readonly<Record<keyof typeof WARNING_NEEDS, string>> = {
  'red-flag': 'Hat ein Zeichen gemeldet, das ein Notfall sein kann.',
  'pain-high': 'Das Training endete wegen Schmerz.',
  'pain-now': 'Schmerzwarnung.',
  'pain-next-day': 'Der Schmerz vom Training davor hatte sich nicht gelegt.',
  'own-range': 'Arm nahe am Ende des angenehmen Bereichs.',
  'trunk-own-range': 'Rumpf über den angenehmen Bereich hinaus.',
  volume: 'Mehr Wiederholungen als üblich oder geplant.',
  missed: 'Zweimal von fünf nicht gefangen.',
  club: 'Platz, Schuhe, Boden und Schläger wurden nicht bestätigt.',
  history: 'Gesundheitsfragen wurden nicht bestätigt.',
  'warm-up': 'Kein Aufwärmen angegeben.',
};

const NEEDS: Readonly<Record<keyof typeof NEED_TEXTS, string>> = {
  rated: 'Schmerz mit {rating} von 10 angegeben.',
  warnedAndRated: '{warning} Schmerz mit {rating} von 10 angegeben.',
  more: '{text} Trainings mit offenem Schmerz: {n}.',
  question: 'Wartet auf deine Antwort.',
  questions: 'Wartet in {n} Trainings auf deine Antwort.',
  unreviewed: 'Trainings anzusehen: {n}.',
  mix: '{inMix} von {balls} Bällen nach genug Übungen ({rehearsals} zu {asked}), letzte {days} Tage.',
  ballsNotAsked: 'Bälle in den letzten {days} Tagen: {balls}. Der Plan hat nur Übungen.',
  muchVolume: '{n} Wiederholungen in 7 Tagen, Plan: höchstens {most}.',
  littleVolume: '{n} Wiederholungen in 14 Tagen, der Plan erlaubt {most}.',
  neverPractised: 'Vor {days} Tagen beigetreten, noch kein Training.',
  joinedSimulated: 'Vor {days} Tagen beigetreten, bisher nur simulierte Trainings.',
  noPractice: 'Seit {days} Tagen kein Training.',
  noPracticeYet: 'Noch kein Training.',
  onlySimulated: 'Bisher nur simulierte Trainings.',
  well: 'Übt nach Plan.',
};

const DRIFT = {
  it: '{label}: {now} in the last 3 sessions ({n} rehearsals), target {target}; {then} in the {of} before ({m}).',
} as const;
const DRIFT_GERMAN = {
  it: '{label}: {now} in den letzten 3 Trainings ({n} Übungen), Zielwert {target}; {then} in den {of} davor ({m}).',
} as const;

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

/** Names of measures, stages and fields by their English; each as it begins a sentence too. */
const NAMES: ReadonlyMap<string, string> = new Map(
  [
    ...(Object.keys(MEASURE_INFO) as MeasureKey[]).flatMap((key) => {
      const { name, term } = measureInfo[key];
      return [
        [measureLabel(key), term === null ? name : `${name} (${term})`],
        [MEASURE_INFO[key].name, name],
      ] as const;
    }),
    ...(Object.keys(STAGES) as (keyof typeof STAGES)[]).map(
      (key) => [ENGLISH_STAGES[key].name, STAGES[key].name] as const,
    ),
    ...(Object.keys(CHANGE_WORDS.fields) as (keyof typeof CHANGE_WORDS.fields)[]).map(
      (key) => [ENGLISH_CHANGES.fields[key], CHANGE_WORDS.fields[key]] as const,
    ),
    [ENGLISH_CHANGES.notAsked, CHANGE_WORDS.notAsked] as const,
    [ENGLISH_CHANGES.notSet, CHANGE_WORDS.notSet] as const,
    [ENGLISH_CHANGES.rehearsalsOnly, CHANGE_WORDS.rehearsalsOnly] as const,
    ['together', VALUE_WORDS.together] as const,
  ].flatMap(([english, german]) => [
    [english, german],
    [capital(english), capital(german)],
  ]),
);

const VALUES = {
  fromTo: 'from {min} to {max}',
  atLeast: 'at least {min}',
  atMost: 'at most {max}',
  ratio: '{a} to {b}',
} as const;
const VALUES_GERMAN = {
  fromTo: 'von {min} bis {max}',
  atLeast: 'mindestens {min}',
  atMost: 'höchstens {max}',
  ratio: '{a} zu {b}',
} as const;

/** A measure's name, a value or a target. */
export const value = (english: string): string =>
  NAMES.get(english) ?? writing.written(translate(VALUES, VALUES_GERMAN, english));

const CHANGES = {
  changed: '{what}: {after}, was {before}.',
  added: 'Checklist, added: {item}',
  gone: 'Checklist, removed: {item}',
  otherOrder: ENGLISH_CHANGES.otherOrder,
  noteGone: ENGLISH_CHANGES.note.gone,
  noteAdded: ENGLISH_CHANGES.note.added,
  noteRewritten: ENGLISH_CHANGES.note.rewritten,
} as const;
const CHANGES_GERMAN = {
  changed: '{what}: {after}, vorher {before}.',
  added: 'Checkliste, hinzugefügt: {item}',
  gone: 'Checkliste, entfernt: {item}',
  otherOrder: CHANGE_WORDS.otherOrder,
  noteGone: CHANGE_WORDS.note.gone,
  noteAdded: CHANGE_WORDS.note.added,
  noteRewritten: CHANGE_WORDS.note.rewritten,
} as const;

/** What is different in a plan, as the hub said it in English. */
export const planChange = (sentence: string): string =>
  recognise(CHANGES, sentence)?.key === 'changed'
    ? translate(CHANGES, CHANGES_GERMAN, sentence, value)
    : translate(CHANGES, CHANGES_GERMAN, sentence);

const warnings = (text: string): string =>
  Object.entries(WARNING_NEEDS).reduce(
    (all, [id, english]) => all.replace(english, WARNINGS[id as keyof typeof WARNINGS]),
    text,
  );

/** Why a student needs a look. */
export function need(text: string): string {
  if (recognise(DRIFT, text) !== null) return translate(DRIFT, DRIFT_GERMAN, text, value);
  const word = (part: string): string => (part === text ? part : need(part));
  const said = translate(NEED_TEXTS, NEEDS, text, word);
  return said === text ? warnings(text) : said;
}
