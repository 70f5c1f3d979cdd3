import { translate } from '../translate.ts';

const ENGLISH = {
  here: 'Repetitions found here only: {list}.',
  there: "Repetitions found on the student's computer only: {list} (counted there).",
  kinds: '{n} repetitions have another kind.',
  results: '{n} repetitions have another result.',
  one: "Repetition {index} is {a} here and {b} on the student's computer.",
  measure: '{label} differs in {where}, most in one with {a} here and {b} there.',
  order: 'The order of rehearsals and balls is different here.',
  counts: "Count here: {a}. On the student's computer: {b}.",
  why: 'Why: {reasons}.',
} as const;

const GERMAN: Readonly<Record<keyof typeof ENGLISH, string>> = {
  here: 'Nur hier gefundene Wiederholungen: {list}.',
  there: 'Nur auf dem Computer des Spielers gefundene Wiederholungen: {list} (dort gezählt).',
  kinds: '{n} Wiederholungen haben eine andere Art.',
  results: '{n} Wiederholungen haben ein anderes Ergebnis.',
  one: 'Wiederholung {index}: hier {a}, auf dem Computer des Spielers {b}.',
  measure: '{label}: anders bei {where}, am meisten bei einer mit {a} hier und {b} dort.',
  order: 'Die Reihenfolge von Übungen und Bällen ist hier anders.',
  counts: 'Zähler hier: {a}. Auf dem Computer des Spielers: {b}.',
  why: 'Grund: {reasons}.',
};

const PARTS = {
  rehearsal: 'a rehearsal',
  ball: 'a ball',
  practiceSwing: 'a practice swing',
  passed: 'passed',
  notPassed: 'not passed',
  notScored: 'not scored',
  one: 'one repetition',
  many: '{n} repetitions',
  counts: '{r} rehearsals and {b} balls',
  labelled: 'the coach has corrected repetitions here',
  versions: "the student's computer has version {there}, this hub {here}",
  targets: 'the plans have different targets',
  noVersion: 'the recording does not say which version its result is from; this hub has {here}',
  live: 'versions and plan are the same; there it was measured live, here from the whole recording',
} as const;

const PARTS_GERMAN: Readonly<Record<keyof typeof PARTS, string>> = {
  rehearsal: 'eine Übung',
  ball: 'ein Ball',
  practiceSwing: 'ein Probeschwung',
  passed: 'gelungen',
  notPassed: 'nicht gelungen',
  notScored: 'nicht gewertet',
  one: 'einer Wiederholung',
  many: '{n} Wiederholungen',
  counts: '{r} Übungen und {b} Bälle',
  labelled: 'der Coach hat hier Wiederholungen korrigiert',
  versions: 'der Computer des Spielers hat Version {there}, dieser Hub {here}',
  targets: 'die Pläne haben verschiedene Zielwerte',
  noVersion: 'die Aufnahme sagt nicht, aus welcher Version ihr Ergebnis ist; dieser Hub hat {here}',
  live: 'Versionen und Plan sind gleich; dort wurde live gemessen, hier aus der ganzen Aufnahme',
};

/** Where the hub's result and the student's differ, as the hub said it. @param value a measure's name or value */
export function difference(sentence: string, value: (english: string) => string): string {
  const part = (text: string): string => {
    const whole = translate(PARTS, PARTS_GERMAN, text);
    if (whole !== text) return whole;
    const pieces = text.split('; ').map((piece) => translate(PARTS, PARTS_GERMAN, piece));
    const joined = pieces.join('; ');
    return joined === text ? value(text) : joined;
  };
  return translate(ENGLISH, GERMAN, sentence, part);
}
