import type { Strings } from '../shape.ts';
import { count, writing } from './numbers.ts';

const signed = writing.written;
const repetitions = (n: number): string => count(n, 'Wiederholung', 'Wiederholungen');

const KINDS: Strings['review']['strip']['kinds'] = {
  rehearsal: 'eine Übung',
  ball: 'ein Ball',
  practiceSwing: 'ein Probeschwung',
  ignored: 'nichts zu zählen',
};

export const review: Strings['review'] = {
  loading: 'Das Training wird geladen …',
  failed: 'Das Training konnte nicht geöffnet werden.',
  again: 'Noch einmal versuchen',
  plan: 'Plan eingehalten?',
  mixKept: (balls, asked) =>
    `Verhältnis eingehalten: ${balls === 1 ? 'Der Ball kam' : `Alle ${balls} Bälle kamen`} nach genug Übungen (${asked}).`,
  mixNotKept: (early, balls, asked) =>
    `Verhältnis nicht eingehalten: ${early} von ${count(balls, 'Ball', 'Bällen')} ${early === 1 ? 'kam' : 'kamen'} zu früh (${asked}).`,
  ballsNotAsked: (balls) =>
    `Verhältnis nicht eingehalten: ${count(balls, 'Ball', 'Bälle')}, aber diese Stufe hat nur Übungen.`,
  noBalls: (asked) => `Keine Bälle (${asked}).`,
  rehearsalsOnly: 'Verhältnis eingehalten: nur Übungen, wie geplant.',
  asked: (rehearsals, balls) => `Plan: ${rehearsals} zu ${balls}`,
  volumeKept: (done, most) => `Umfang eingehalten: ${done} von höchstens ${repetitions(most)}.`,
  volumeNotKept: (done, most) => `Umfang zu groß: ${repetitions(done)}, Plan: höchstens ${most}.`,
  weekKept: (done, most) =>
    `Woche eingehalten: ${done} von höchstens ${repetitions(most)} in den sieben Tagen bis zu diesem Training.`,
  weekNotKept: (done, most) =>
    `Woche zu viel: ${repetitions(done)} in den sieben Tagen bis zu diesem Training, Plan: höchstens ${most}.`,
  warnings: 'Warnungen',
  sensors: {
    title: 'Sensordaten',
    rate: (perSecond) => `${perSecond} Messungen je Sekunde`,
    lost: (pct) => `${pct} % verloren`,
    gaps: (n, s) => (n === 0 ? 'keine Lücke' : `${count(n, 'Lücke', 'Lücken')} (${s} s)`),
    saturated: (n) => `${count(n, 'Messung', 'Messungen')} über dem Messbereich`,
    clock: (ms) => `Schwankung der Uhr ${ms} ms`,
  },
  head: {
    title: 'Messwerte des Trainings',
    measure: 'Messwert',
    target: 'Zielwert',
    rehearsals: 'Übungen',
    balls: 'Bälle',
    picture: 'Median und mittlere Hälfte',
    n: repetitions,
    reached: (reached, judged) => `${reached} von ${judged} im Zielbereich`,
    middle: (low, high) => `die Hälfte lag zwischen ${low} und ${high}`,
    none: 'keine',
    nothing: 'Es konnten keine Übungen oder Bälle gemessen werden.',
    few: 'Wenige Wiederholungen: Ein Median aus weniger als fünf ist nicht verlässlich.',
    note: 'Wert: Median. ±: Messfehler eines Werts am Menschen. Ein großer Teil davon ist bei jeder Wiederholung gleich, mehr Wiederholungen machen ihn also nicht kleiner. Wiederholungen mit verlorenen Daten sind nicht enthalten.',
  },
  examples: 'Beispiele',
  example: { typical: 'Typische', best: 'Beste', worst: 'Am weitesten vom Ziel' },
  exampleOf: (name, index) => `${name}: Wiederholung ${index}`,
  tooFewForExamples: 'Weniger als drei gewertete Übungen: zu wenige für eine typische.',
  strip: {
    title: 'Alle Wiederholungen der Reihe nach',
    hint: 'Pfeiltasten: weiter. Enter: öffnen.',
    noted: (text) => `Notiz: ${text}`,
    corrected: (detected) => `von Hand korrigiert, erkannt als ${detected}`,
    kinds: KINDS,
    name: (index, mark, at) => `${index}: ${mark}, bei ${at}`,
    plus: (notes) => notes.map((n) => `; ${n}`).join(''),
  },
  filter: {
    title: 'Zeigen',
    all: 'Alle',
    one: (mark, n) => `${mark} (${n})`,
    marks: {
      passed: 'Übungen gelungen',
      notPassed: 'nicht gelungen',
      notScored: 'nicht gewertet',
      ball: 'Bälle',
      practiceSwing: 'Probeschwünge',
      ignored: 'Nicht gezählt',
    },
    through: (shown, all) =>
      `Vorige und Nächste gehen durch ${shown} von ${repetitions(all)} (Filter an).`,
    clear: 'Alle zeigen',
    shown: (shown, all) =>
      shown === all
        ? `${all === 1 ? 'Die eine' : `Alle ${all}`} ${all === 1 ? 'Wiederholung' : 'Wiederholungen'}`
        : `${shown} von ${repetitions(all)}`,
    nothing: 'Keine Wiederholung passt zum Filter.',
  },
  multiples: {
    title: 'Nebeneinander',
    loading: (n) => `${repetitions(n)} ${n === 1 ? 'wird' : 'werden'} geladen …`,
    failed: 'Die Kurven konnten nicht geladen werden:',
    legend: (time, flexion, turn) =>
      `Jede ${time} um das Loslassen (senkrechte Linie; bei Bällen und Probeschwüngen die schnellste Drehung vor dem Treffer). Oben: Flexion, ${flexion}. Unten: Drehung, ${turn}. Überall dieselben Achsen.`,
    typical: (index) => `Grau: Wiederholung ${index}, die typische.`,
    around: (from, to) => `von ${signed(from)} bis +${signed(to)} s`,
    range: (low, high) => `${signed(low)} bis ${signed(high)}°`,
  },
  none: 'Dieses Training hat keine Wiederholungen. Übe etwas länger, oder sieh auf der Seite „Sensoren“ nach, ob beide Sensoren senden.',
  few: (n) =>
    `Nur ${repetitions(n)}: Sieh ${n === 1 ? 'sie' : 'jede einzeln'} an; Mediane sind nicht verlässlich.`,
  repetition: {
    title: (index) => `Wiederholung ${index}`,
    missing: (index) => `Dieses Training hat keine Wiederholung ${index}.`,
    of: (mark, at) => `${mark}, bei ${at}`,
    back: 'Alle Wiederholungen',
    previous: 'Vorige',
    next: 'Nächste',
    keys: 'Links und rechts: vorige und nächste. Escape: zurück.',
    curves: 'Kurven',
    loading: 'Die Kurven werden geladen …',
    failed: 'Die Kurven konnten nicht geladen werden:',
    empty: 'Keine vollständigen Daten für diese Wiederholung. Es gibt nichts zu zeichnen.',
    names: {
      flexionDeg: 'Flexion',
      turnDeg: 'Drehung zum Ziel',
      leanDeg: 'Neigung',
      elevationDeg: 'Arm gehoben (Elevation)',
      keptRotationDeg: 'Armdrehung ab oben',
    },
    describe: (names, from, to) =>
      `Kurven von ${names} von ${signed(from)} bis ${signed(to)} s um den gemeinsamen Zeitpunkt. Lies die Werte mit dem Regler ab.`,
    event: {
      start: 'Beginn',
      top: 'Oben',
      release: 'Loslassen',
      armStart: 'Armstart',
      catch: 'Fangen',
      delivery: 'Durchgang',
      impact: 'Treffer',
    },
    events: 'Gehe zu',
    scrub: 'Zeitpunkt',
    play: 'Abspielen',
    stop: 'Anhalten',
    speed: 'Tempo',
    speeds: { quarter: 'ein Viertel', half: 'halb', whole: 'Echtzeit' },
    stepped:
      'Dein System ist auf weniger Bewegung eingestellt: Das Abspielen springt von Zeitpunkt zu Zeitpunkt.',
    time: (s) => `${signed(s)} s`,
    from: {
      rehearsal: 'ab dem Loslassen',
      ball: 'ab dem Durchgang',
      practiceSwing: 'ab dem Durchgang',
    },
    value: (deg) => `${signed(deg)}°`,
    noValue: 'kein Wert',
    body: 'Körper',
    ghost: 'Gestrichelt: beim Ansprechen',
    noGhost: 'Keine Daten vom Ansprechen dieser Wiederholung.',
    lost: 'Daten verloren',
    measures: 'Messwerte',
    know: 'Hinweise zu dieser Wiederholung',
    cue: 'Hinweis',
    ballNotJudged: 'Bälle werden gemessen, nicht gewertet.',
    swingNotJudged: 'Probeschwünge werden aufgelistet, nicht gewertet und nicht gezählt.',
    releaseIs:
      'Loslassen heißt hier: der Moment, in dem die Brust startet. Zwei Sensoren sehen nicht, wie sich die Hand öffnet.',
    catchSure: (clear) =>
      clear
        ? 'Fangen deutlich erkannt.'
        : 'Fangen schwer zu erkennen: Der Zeitpunkt ist weniger sicher.',
    noFlags: 'Keine Probleme bei dieser Wiederholung.',
    marked: (found, said) =>
      `Erkannt als ${KINDS[found]}, von Hand korrigiert: ${KINDS[said]}${
        said === 'ignored' ? '. Ihre Zahlen werden nirgends mitgezählt.' : '.'
      }`,
    lastTimes: 'Genauigkeit: Loslassen und Armstart etwa 25 ms, Fangen 15 ms.',
  },
  compare: {
    label: 'Vergleichen mit',
    none: 'keiner',
    option: (index, mark) => `${index}: ${mark}`,
    title: (here, beside) => `${here} und ${beside} im Vergleich`,
    legend: (here, beside) =>
      `Durchgezogen: Wiederholung ${here}. Gestrichelt: Wiederholung ${beside}.`,
    aligned: 'Beide sind am Loslassen ausgerichtet (Bälle und Probeschwünge am Durchgang).',
    columns: { measure: 'Messwert', difference: 'Unterschied', read: 'Bedeutung' },
    clear: 'größer als der Messfehler',
    within: 'innerhalb des Messfehlers',
    notBoth: 'nicht bei beiden gemessen',
    note: 'Das vergleicht eine Wiederholung mit einer anderen. Es zeigt nicht, ob sich die nächsten genauso unterscheiden. ± ist der Messfehler eines Werts mal Wurzel 2.',
    bodies: (beside) => `Gestrichelt: Wiederholung ${beside} zum selben Zeitpunkt`,
  },
};
