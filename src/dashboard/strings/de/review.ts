import type { Strings } from '../shape.ts';
import { count, writing } from './numbers.ts';

const signed = writing.written;
const repetitions = (n: number): string => count(n, 'Wiederholung', 'Wiederholungen');

const KINDS: Strings['review']['strip']['kinds'] = {
  rehearsal: 'eine Probe',
  ball: 'ein Ball',
  practiceSwing: 'ein Übungsschwung',
  ignored: 'nichts zu zählen',
};

export const review: Strings['review'] = {
  loading: 'Die Einheit wird geöffnet.',
  failed: 'Die Einheit konnte nicht geöffnet werden.',
  again: 'Noch einmal versuchen',
  plan: 'Plan eingehalten?',
  mixKept: (balls, asked) =>
    `Mischung eingehalten: ${balls === 1 ? 'Der Ball kam' : `Alle ${balls} Bälle kamen`} nach genügend Proben (${asked}).`,
  mixNotKept: (early, balls, asked) =>
    `Mischung nicht eingehalten: ${early} von ${count(balls, 'Ball', 'Bällen')} ${early === 1 ? 'kam' : 'kamen'} zu früh (${asked}).`,
  ballsNotAsked: (balls) =>
    `Mischung nicht eingehalten: ${count(balls, 'Ball', 'Bälle')} in einer Stufe nur mit Proben.`,
  noBalls: (asked) => `Es wurde kein Ball geschlagen (${asked}).`,
  rehearsalsOnly: 'Nur Proben, wie verlangt.',
  asked: (rehearsals, balls) => `${rehearsals} zu ${balls} verlangt`,
  volumeKept: (done, most) => `Umfang eingehalten: ${done} von höchstens ${repetitions(most)}.`,
  volumeNotKept: (done, most) =>
    `Umfang nicht eingehalten: ${repetitions(done)}, höchstens ${most} verlangt.`,
  weekKept: (done, most) =>
    `Woche eingehalten: ${done} von höchstens ${most} in den sieben Tagen bis dahin.`,
  weekNotKept: (done, most) =>
    `Woche nicht eingehalten: ${done} in den sieben Tagen bis dahin, höchstens ${most} verlangt.`,
  warnings: 'Warnungen',
  sensors: {
    title: 'Wie gut die Sensoren waren',
    rate: (perSecond) => `${perSecond} Messungen je Sekunde`,
    lost: (pct) => `${pct} % verloren`,
    gaps: (n, s) => (n === 0 ? 'keine Lücke' : `${count(n, 'Lücke', 'Lücken')} (${s} s)`),
    saturated: (n) => `${count(n, 'Messung', 'Messungen')} am Ende des Messbereichs`,
    clock: (ms) => `Uhr auf ${ms} ms gleichmäßig`,
  },
  head: {
    title: 'Messwerte der Einheit',
    measure: 'Messwert',
    target: 'Vorgabe',
    rehearsals: 'Proben',
    balls: 'Bälle',
    picture: 'Median und mittlere Hälfte',
    n: (n) => `n ${n}`,
    reached: (reached, judged) => `${reached} von ${judged} in der Vorgabe`,
    middle: (low, high) => `mittlere Hälfte ${low} bis ${high}`,
    none: 'keine',
    nothing: 'Keine Probe und kein Ball konnte gemessen werden.',
    few: 'Wenige Wiederholungen: Ein Median aus weniger als fünf sagt wenig.',
    note: 'Wert: Median. ±: wie sicher ein Wert am Menschen ist; vieles davon ist bei jeder Wiederholung gleich, mehr Wiederholungen machen es also nicht kleiner. Wiederholungen mit verlorenen Messwerten fehlen.',
  },
  examples: 'Sieh dir an',
  example: { typical: 'Typische', best: 'Beste', worst: 'Schwächste' },
  exampleOf: (name, index) => `${name}: Wiederholung ${index}`,
  tooFewForExamples: 'Weniger als drei gewertete Proben: Keine steht für die Einheit.',
  strip: {
    title: 'Alle Wiederholungen im Zeitverlauf',
    hint: 'Pfeiltasten gehen weiter, Eingabe öffnet.',
    noted: (text) => `notiert: ${text}`,
    corrected: (detected) => `von Hand gesetzt, erkannt als ${detected}`,
    kinds: KINDS,
    name: (index, mark, at) => `${index}: ${mark}, bei ${at}`,
    plus: (notes) => notes.map((n) => `; ${n}`).join(''),
  },
  filter: {
    title: 'Zeigen',
    all: 'Alle',
    one: (mark, n) => `${mark} (${n})`,
    marks: {
      passed: 'Proben gelungen',
      notPassed: 'nicht gelungen',
      notScored: 'nicht gewertet',
      ball: 'Bälle',
      practiceSwing: 'Übungsschwünge',
      ignored: 'Übergangen',
    },
    through: (shown, all) =>
      `Die Nachbarn sind ${shown} von ${repetitions(all)}: die, die der Filter zeigt.`,
    clear: 'Alle zeigen',
    shown: (shown, all) =>
      shown === all
        ? `${all === 1 ? 'Die eine' : `Alle ${all}`} ${all === 1 ? 'Wiederholung' : 'Wiederholungen'}`
        : `${shown} von ${repetitions(all)}`,
    nothing: 'Keine Wiederholung ist von der gewählten Art.',
  },
  multiples: {
    title: 'Nebeneinander',
    loading: (n) => `${repetitions(n)} ${n === 1 ? 'wird' : 'werden'} gezeichnet …`,
    failed: 'Die Kurven waren nicht zu bekommen:',
    legend: (time, flexion, turn) =>
      `Jede ${time} um das Loslassen (senkrechte Linie; bei Bällen und Übungsschwüngen die schnellste Drehung vor dem Treffer). Oben: Flexion, ${flexion}. Unten: Drehung, ${turn}. Überall dieselben Achsen.`,
    typical: (index) => `Grau: Wiederholung ${index}, die typische.`,
    around: (from, to) => `von ${signed(from)} bis +${signed(to)} s`,
    range: (low, high) => `${signed(low)} bis ${signed(high)}°`,
  },
  none: 'Die Einheit hat keine Wiederholung. Übe etwas länger, oder sieh auf der Seite „Sensoren“ nach, ob beide Sensoren gesendet haben.',
  few: (n) =>
    `Nur ${repetitions(n)}: Sieh ${n === 1 ? 'sie' : 'jede einzeln'} an und vergleiche keine Mediane.`,
  repetition: {
    title: (index) => `Wiederholung ${index}`,
    missing: (index) => `Die Einheit hat keine Wiederholung ${index}.`,
    of: (mark, at) => `${mark}, bei ${at}`,
    back: 'Alle Wiederholungen',
    previous: 'Vorige',
    next: 'Nächste',
    keys: 'Links und rechts gehen zu den Nachbarn, Escape geht zurück.',
    curves: 'Kurven',
    loading: 'Die Kurven werden geholt …',
    failed: 'Die Kurven waren nicht zu bekommen:',
    empty: 'Kein Messwert dieser Wiederholung ist vollständig: Es gibt nichts zu zeichnen.',
    names: {
      flexionDeg: 'Flexion',
      turnDeg: 'Drehung zum Ziel',
      leanDeg: 'Neigung',
      elevationDeg: 'Arm gehoben (Elevation)',
      keptRotationDeg: 'Arm nach außen gedreht seit oben',
    },
    describe: (names, from, to) =>
      `Kurven von ${names} von ${signed(from)} bis ${signed(to)} s um den gemeinsamen Zeitpunkt; lies die Werte mit dem Schieber ab`,
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
    stepped: 'Dein System möchte weniger Bewegung: Das Abspielen geht von Zeitpunkt zu Zeitpunkt.',
    time: (s) => `${signed(s)} s`,
    from: {
      rehearsal: 'ab dem Loslassen',
      ball: 'ab dem Durchgang',
      practiceSwing: 'ab dem Durchgang',
    },
    value: (deg) => `${signed(deg)}°`,
    noValue: 'kein Wert',
    body: 'Körper',
    ghost: 'Gestrichelt: das Ansprechen',
    noGhost: 'Das Ansprechen dieser Wiederholung ging verloren.',
    lost: 'Messwerte verloren',
    honest: 'Gezeichnet aus Brust und hinterem Arm. Beine und Kopf werden nicht gemessen.',
    measures: 'Messwerte',
    know: 'Was du dazu wissen solltest',
    cue: 'Hinweis',
    ballNotJudged: 'Bälle werden neben den Vorgaben gemessen, nicht beurteilt.',
    swingNotJudged: 'Übungsschwünge werden aufgelistet, nicht beurteilt und nicht gezählt.',
    releaseIs:
      'Als Loslassen gilt der Start der Brust: Zwei Sensoren sehen nicht, wie sich die Hand öffnet.',
    catchSure: (of1) => `Wie deutlich der Stoß des Fangens aus dem Signal ragt: ${of1} von 1.`,
    noFlags: 'Nichts hat diese Wiederholung gestört.',
    marked: (found, said) =>
      `Erkannt als ${KINDS[found]}, von Hand gesetzt als ${KINDS[said]}${
        said === 'ignored'
          ? ': Ihre Zahlen bleiben aus allem, was zusammengezählt wird.'
          : ' und so gemessen.'
      }`,
    lastTimes: 'Loslassen und Armstart sind auf etwa 25 ms sicher, das Fangen auf 15 ms.',
  },
  compare: {
    label: 'Vergleichen mit',
    none: 'keiner anderen',
    option: (index, mark) => `${index}: ${mark}`,
    title: (here, beside) => `${here} gegen ${beside}`,
    legend: (here, beside) =>
      `Durchgezogen: Wiederholung ${here}. Gestrichelt: Wiederholung ${beside}.`,
    aligned: 'Beide stehen beim Loslassen (Bälle und Übungsschwünge beim Durchgang).',
    columns: { measure: 'Messwert', difference: 'Unterschied', read: 'Was es heißt' },
    clear: 'größer als die Unsicherheit',
    within: 'innerhalb der Unsicherheit',
    notBoth: 'nicht bei beiden gemessen',
    note: 'Eine Wiederholung gegen eine (n 1 und 1): Ob sich die nächsten ebenso unterscheiden, kann das nicht sagen. ± ist Wurzel 2 mal die Sicherheit eines Werts.',
    bodies: (beside) => `Gestrichelt: Wiederholung ${beside} zum selben Zeitpunkt`,
  },
};
