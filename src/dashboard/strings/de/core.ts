import type { CalibrationProblem } from '../../../body/calibrationResult.ts';
import { CALIBRATION_TEXTS } from '../../../body/calibrationTexts.ts';
import { CUE_TEXTS } from '../../../coaching/cues.ts';
import type { Problem } from '../../../coaching/jsonReader.ts';
import type { Cue, SafetyWarning } from '../../../coaching/judgement.ts';
import { DEFAULT_PLAN, type Plan } from '../../../coaching/plan.ts';
import { planChanges, planLines } from '../../../coaching/planChanges.ts';
import { SAFETY_TEXTS } from '../../../coaching/safetyTexts.ts';
import type { PracticeSummary } from '../../../coaching/summary.ts';
import type { RepetitionFlag } from '../../../swings/repetition.ts';
import {
  DESK_TEXTS,
  DISK_TEXTS,
  KEEPING_TEXTS,
  KIND_TEXTS,
  LINK_TEXTS,
  MEND_TEXTS,
  PROBLEM_TEXTS,
  REFUSAL_TEXTS,
  reasonParts,
} from '../../../streaming/contract.ts';
import { fill, type SentenceBook } from '../../../sensors/sentence.ts';
import { API_TEXTS } from '../../../streaming/apiTexts.ts';
import {
  FIELD_LABELS,
  FIELD_REFUSALS,
  type FieldLabelKey,
} from '../../../streaming/fieldRefusals.ts';
import { HUB_LINK_TEXTS } from '../../../streaming/hubContract/linkTexts.ts';
import { translate } from '../translate.ts';
import { CALIBRATION, CALIBRATION_WORDS, CUES, FIELDS, REFUSALS, WORN_WORDS } from './books.ts';
import { API, FIELD_NAMES, FIELD_REASONS } from './api.ts';
import { need, planChange, value } from './coachSaid.ts';
import { difference } from './differences.ts';
import { DISK, KEEPING } from './keeping.ts';
import { LINK } from './link.ts';
import { nextStep } from './nextStep.ts';
import { writing } from './numbers.ts';
import { DESK, KINDS, LINKS, MENDS, PROBLEMS } from './radio.ts';
import { CHANGE_WORDS, STAGES, TARGET_BASIS } from './planWords.ts';
import { WARNINGS } from './safety.ts';

const known = (words: Readonly<Record<string, string>>, key: string): string | undefined =>
  Object.hasOwn(words, key) ? words[key] : undefined;

/** By its sentence; one that an older program said otherwise by its code, else as it came. */
function cueText({ code, text }: Cue): string {
  const told = translate(CUE_TEXTS, CUES, text);
  return told === text ? (known(CUES, code) ?? text) : told;
}

function warningText({ id, text }: Pick<SafetyWarning, 'id' | 'text'>): string {
  const german = known(WARNINGS, id);
  if (german === undefined) return text;
  const told = translate({ it: SAFETY_TEXTS[id].text }, { it: german }, text);
  return told === text && !german.includes('{') ? german : told;
}

const LABEL_KEYS = Object.keys(FIELD_LABELS) as FieldLabelKey[];

const calibrationWord = (value: string): string =>
  known(CALIBRATION_WORDS, value) ?? writing.written(value);

const fieldName = (label: string): string => {
  const key = LABEL_KEYS.find((k) => FIELD_LABELS[k] === label);
  return key === undefined ? label : FIELD_NAMES[key];
};

const refusalWord = (value: string): string => known(WORN_WORDS, value) ?? fieldName(value);

/** All that a practice, the radio, the sensors page and a request may be told. */
const TOLD: readonly (readonly [english: SentenceBook, german: SentenceBook])[] = [
  [REFUSAL_TEXTS, REFUSALS],
  [PROBLEM_TEXTS, PROBLEMS],
  [MEND_TEXTS, MENDS],
  [LINK_TEXTS, LINKS],
  [DESK_TEXTS, DESK],
  [KIND_TEXTS, KINDS],
  [API_TEXTS, API],
  [HUB_LINK_TEXTS, LINK],
  [FIELD_REFUSALS, FIELD_REASONS],
];

function refusalText(sentence: string): string {
  const told = TOLD.map(([from, to]) => translate(from, to, sentence, refusalWord));
  return told.find((text) => text !== sentence) ?? sentence;
}

const standard: readonly string[] = [
  'Fuß auf der Seite weg vom Ziel etwa 20 Grad nach außen gedreht',
  'Arm mit dem Sensor etwas lockerer',
  'Schultern parallel zur Ziellinie',
  'Kamera in Verlängerung der Standlinie, etwa auf Höhe des Brustbeins',
  'Für die Ansicht von vorn: Kamera rechtwinklig zur Standlinie, auf derselben Höhe',
];

const checklistItem = (item: string): string => {
  const at = DEFAULT_PLAN.checklist.indexOf(item);
  return standard[at] ?? item;
};

export const said = {
  cue: cueText,
  warning: warningText,
  calibration: ({ message }: Pick<CalibrationProblem, 'message'>): string =>
    translate(CALIBRATION_TEXTS, CALIBRATION, message, calibrationWord),
  refusal: refusalText,
  link: (reason: string): string => refusalText(reasonParts(reason).sentence),
  keeping: (sentence: string): string =>
    translate(KEEPING_TEXTS, KEEPING, sentence, (why) => translate(DISK_TEXTS, DISK, why)),
  field: ({ key, values }: Problem, label: string): string => {
    const told = Object.entries(values).map(([name, v]) => [name, writing.written(String(v))]);
    return `${label}: ${fill(FIELDS[key], Object.fromEntries(told) as Record<string, string>)}`;
  },
  lineOf: (n: number, label: string) => `${label}, Zeile ${n}`,
  need,
  difference: (sentence: string): string => difference(sentence, value),
  planChange,
  nextStep: (summary: PracticeSummary): string => nextStep(summary, cueText),
  planChanges: (before: Plan, after: Plan): readonly string[] =>
    planChanges(before, after, CHANGE_WORDS),
  planLines: (plan: Plan): ReturnType<typeof planLines> => planLines(plan, CHANGE_WORDS),
  plan: (plan: Plan): Plan => ({
    ...plan,
    name: plan.name === DEFAULT_PLAN.name ? 'Halten, loslassen, fangen' : plan.name,
    checklist: plan.checklist.map(checklistItem),
  }),
};

const FLAGS: Readonly<Record<RepetitionFlag, string>> = {
  gap: 'während dieser Wiederholung oder kurz davor gingen Daten verloren, deshalb nicht gewertet',
  'not-seen':
    'das Signal ging mittendrin verloren, deshalb keine Messung; gib an, was es war, wenn du es weißt',
  saturated: 'ein Sensor hat seinen Messbereich überschritten, deshalb nicht gewertet',
  drift:
    'das letzte ruhige Ansprechen liegt lange zurück, Drehung und Armwinkel können abgewandert sein',
  'catch-assumed': 'bis 400 ms nach dem Loslassen gemessen, weil kein Fangen gefunden wurde',
  'catch-not-detected': 'kein Fangen erkannt',
  landed: 'der Schläger ist vor dem Fangen gelandet',
  'elevation-out-of-range':
    'der Arm war weniger als 30 oder mehr als 150 Grad gehoben, wo sich seine Drehung nicht messen lässt',
  'release-measured': 'der Schlägersensor hat das Loslassen gemessen',
  together: 'Brust und Arm sind gleichzeitig gestartet (weniger als 20 ms auseinander)',
  'impact-not-detected':
    'kein Treffer gefunden, deshalb gilt die schnellste Brustdrehung der ganzen Bewegung',
  'impact-not-seen':
    'der Armsensor hat im Moment des Treffers nichts gesendet; korrigiere die Art, wenn es ein Ball war',
  'marked-by-hand': 'von Hand korrigiert',
};

export const names = {
  flags: FLAGS,
  stages: STAGES,
  targetBasis: TARGET_BASIS,
  rules: {
    best: 'Beste: die meisten Zielwerte erreicht. Bei Gleichstand die, deren knappster Messwert am weitesten im Zielbereich liegt.',
    typical: 'Typische: Ihre Messwerte liegen im Mittel am nächsten an den Medianen des Trainings.',
    worst:
      'Am weitesten vom Ziel: die wenigsten Zielwerte erreicht. Bei Gleichstand die mit dem Messwert am weitesten außerhalb des Zielbereichs.',
  },
};
