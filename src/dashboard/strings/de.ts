import { comparisonTexts, differenceText, pairTexts } from '../../coaching/differenceText.ts';
import {
  type FallUnit,
  fallText,
  measureText,
  percentText,
  targetText,
} from '../../coaching/measureText.ts';
import type { LedgerStatus } from '../../coaching/ledger.ts';
import { coach } from './de/coach.ts';
import { names, said } from './de/core.ts';
import { desk } from './de/desk.ts';
import { handsFree } from './de/handsFree.ts';
import { help } from './de/help.ts';
import { home } from './de/home.ts';
import { measureInfo } from './de/measures.ts';
import { VALUE_WORDS, count, writing } from './de/numbers.ts';
import { plan } from './de/plan.ts';
import { planPage } from './de/planPage.ts';
import { progress } from './de/progress.ts';
import { ready } from './de/ready.ts';
import { review } from './de/review.ts';
import { NOT_A_MEDICAL_DEVICE, OTHERS_COME_FIRST, WARNINGS } from './de/safety.ts';
import { sessionNotes, sessions } from './de/sessions.ts';
import { secondScreen } from './de/secondScreen.ts';
import { settings } from './de/settings.ts';
import { after, today } from './de/today.ts';
import type { Strings } from './shape.ts';

const { tag, decimal, written, day, weekday, dayAndTime } = writing;

/** What comes next, for the screen and the voice. */
function next({ next: due, toGo, ballTooEarly }: LedgerStatus): string {
  if (toGo === null) return ballTooEarly ? 'Noch keine Bälle. Vorerst nur Proben.' : 'Nur Proben.';
  if (due === 'ball') return toGo === 1 ? 'Schlag einen Ball.' : `Schlag ${toGo} Bälle.`;
  if (ballTooEarly)
    return `Der Ball kam zu früh. Erst ${toGo === 1 ? 'eine Probe' : `${toGo} Proben`}.`;
  return toGo === 1 ? 'Noch eine Probe.' : `Noch ${toGo} Proben.`;
}

/** Every text in German. */
export const de: Strings = {
  product: 'Stillcatch',
  locale: tag,
  decimal,
  written,
  date: { day, weekday, dayAndTime },
  said,
  names,
  skip: 'Direkt zum Inhalt',
  nav: {
    label: 'Seiten',
    today: 'Heute',
    ready: 'Bereit machen',
    after: 'Danach',
    practice: 'Training',
    sessions: 'Einheiten',
    progress: 'Verlauf',
    plan: 'Plan',
    coach: 'Coach',
    sensors: 'Sensoren',
    screen: 'Zweiter Bildschirm',
    safety: 'Sicherheit',
    help: 'Hilfe',
  },

  coach,
  ready,
  today,
  after,
  sessions,
  sessionNotes,
  review,
  progress,
  plan,
  planPage,
  settings,
  secondScreen,
  handsFree,
  help,
  home,

  caution: {
    short: NOT_A_MEDICAL_DEVICE,
    rest: OTHERS_COME_FIRST,
    more: 'Mehr dazu',
  },

  source: {
    synthetic: 'Simulierte Person',
    replay: 'Aufgenommene Einheit',
    simulatedWhy: 'Kein lebender Körper: Jede Zahl unten ist aus simulierten Sensoren berechnet.',
    replayWhy: 'Kein lebender Körper: Jede Zahl unten ist aus einer Aufnahme berechnet.',
    failed: (reason) => `Die Sensoren haben aufgehört: ${reason}`,
    starting: 'Wartet auf die ersten Messwerte.',
  },

  connection: {
    connecting: 'Der Dienst auf diesem Computer wird gesucht …',
    lost: 'Die Verbindung zum Dienst ist abgebrochen.',
    lostHelp:
      'Die Seite versucht es von selbst wieder. Kommt keine Antwort, starte den Dienst neu, mit „npm start“ im Ordner des Projekts. Was du siehst, ist der letzte Stand.',
  },

  state: {
    now: 'Jetzt',
    calibrating: 'Kalibrierung',
    waiting: 'Ansprechen',
    address: 'Nach oben',
    ball: 'Schlag einen Ball',
    backswing: 'Nach oben',
    hold: (s) => `Halten ${s}`,
    letGo: 'Loslassen',
    released: 'Fangen',
    caught: 'Gefangen',
    paused: 'Pause',
    ended: 'Ende',
    nothing: 'Noch nicht',
  },
  detail: {
    calibrating: 'Folge den Schritten; sie werden gesprochen.',
    step: (index, of) => `Schritt ${index} von ${of}`,
    waiting: 'Sprich den Ball an und sei still.',
    address: 'Du bist still. Schwing nach oben, wann du magst.',
    ball: 'Die Proben sind gemacht. Ein voller Schwung mit Ball.',
    backswing: 'Komm dort an und sei still.',
    hold: (target) => `Oben still bis ${target}`,
    letGo: 'Erst die Brust, nach unten und herum. Lass den Schläger fallen.',
    released: 'Fang ihn, den Arm nach außen gedreht.',
    caught: 'Zurück zum Ansprechen.',
    paused: 'Nichts wird gezählt. Mit P geht es weiter.',
    ended: 'Es kommen keine Messwerte mehr. Was gemessen ist, bleibt hier.',
    refused: 'Die Kalibrierung wurde abgelehnt. Lies unten, warum, und beginne sie noch einmal.',
  },
  step: {
    'calibration-stand': 'Still stehen',
    'calibration-bow': '3-mal verbeugen',
    'calibration-armRaise': 'Arm heben',
    'address-reference': 'Ansprechen',
  },
  stepDetail: {
    'calibration-stand': 'Aufrecht, Arme hängen.',
    'calibration-bow': 'Drei langsame Verbeugungen aus der Hüfte.',
    'calibration-armRaise': 'Hinterer Arm gestreckt, nach vorn auf Schulterhöhe, dreimal.',
    'address-reference': 'So wie du immer ansprichst, zwei Sekunden still.',
  },

  hold: {
    label: 'Halten',
    value: (s, target) => `${s} s von ${target} s`,
    target: (s) => `${s} s`,
    noTarget: 'Der Plan verlangt kein Halten.',
  },

  verdict: {
    title: 'Letzte Wiederholung',
    none: 'Noch keine Wiederholung',
    noneDetail: 'Das erste Urteil steht hier nach dem ersten Fangen.',
    passed: 'Gelungen',
    notPassed: 'Noch nicht',
    notScored: 'Nicht gewertet',
    ball: 'Ball',
    practiceSwing: 'Übungsschwung',
    ignored: 'Übergangen',
    ballDetail: 'Von oben bis zum Durchgang gemessen, nicht beurteilt.',
    practiceSwingDetail: 'Aufgelistet, nicht gezählt.',
    number: (index) => `Wiederholung ${index}`,
  },

  ledger: {
    title: 'Reihe',
    rehearsals: (n) => count(n, 'Probe', 'Proben'),
    balls: (n) => count(n, 'Ball', 'Bälle'),
    kept: (ratio, asked) => `${ratio} zu 1 gehalten, ${asked} verlangt`,
    noRatio: (asked) => `${asked} verlangt`,
    asked: (rehearsals, balls) => `${rehearsals} zu ${balls}`,
    next,
    empty: 'Proben und Bälle reihen sich hier auf.',
    entry: {
      passed: 'Probe gelungen',
      notPassed: 'Probe noch nicht gelungen',
      notScored: 'Probe nicht gewertet',
      ball: 'Ball',
      practiceSwing: 'Übungsschwung',
      ignored: 'übergangen',
    },
    legend:
      'Gefüllter Kreis gelungen, offener Kreis noch nicht, Dreieck Ball, Strich Übungsschwung',
  },

  measures: {
    title: 'Messwerte der letzten Wiederholung',
    none: 'Die Messwerte jeder Wiederholung stehen hier mit den Vorgaben des Plans.',
    in: 'in der Vorgabe',
    out: 'außerhalb der Vorgabe',
    info: measureInfo,
    label: (key) => {
      const { name, term } = measureInfo[key];
      return term === null ? name : `${name} (${term})`;
    },
    value: (key, value, target) => measureText(key, value, target, VALUE_WORDS),
    fall: (cm, unit: FallUnit, measured) =>
      `Der Schläger ist etwa ${fallText(cm, unit)} gefallen: ${
        measured
          ? 'aus dem freien Fall, den der Sensor am Schläger gespürt hat.'
          : 'so weit fällt ein losgelassener Körper in der Zeit vom Loslassen bis zum Fangen; weniger, wo die Hand ihn gebremst hat.'
      }`,
    difference: (key, difference) => differenceText(key, difference, VALUE_WORDS),
    pair: (key, here, beside) => pairTexts(key, here, beside, VALUE_WORDS),
    compared: (key, earlier, later, interval) =>
      comparisonTexts(key, earlier, later, interval, VALUE_WORDS),
    percent: (ratio, edges) => percentText(ratio, edges, VALUE_WORDS),
    target: (key, target) => targetText(key, target, VALUE_WORDS),
    noTarget: 'keine Vorgabe',
    missedCatch: 'verpasst',
    plusMinus: (key, amount) => {
      const { unit } = measureInfo[key];
      return `±${written(String(amount))}${unit === '°' ? '°' : ` ${unit}`}`;
    },
    basis: 'Klammer: Vorgabe (festgelegt, keine veröffentlichte Norm).',
    whisker: 'Strich: wie sicher.',
    explain: 'Was es ist, wie sicher',
    sure: (text) => `Wie sicher: ${text}.`,
    cannotSee: 'Nicht zu sehen:',
  },

  body: {
    title: 'Körper',
    faceOn: 'Von vorn',
    downTheLine: 'Entlang der Ziellinie',
    ghost: 'Gestrichelt: dein Ansprechen',
    none: 'Die Figuren erscheinen, sobald die Kalibrierung gelungen ist.',
    honest: 'Gezeichnet aus Brust und hinterem Arm. Beine und Kopf werden nicht gemessen.',
    describe: (view, flexion, turn) => `${view}: Brust ${flexion} vorgebeugt, ${turn} gedreht`,
  },

  curves: {
    title: 'Letzte 10 Sekunden',
    flexion: 'Flexion',
    turn: 'Drehung zum Ziel',
    kept: 'Armdrehung seit oben',
    now: 'jetzt',
    none: 'Die Kurven beginnen, sobald die Kalibrierung gelungen ist.',
    describe:
      'Drei Kurven über die letzten zehn Sekunden: Flexion, Drehung und Armdrehung, in Grad',
  },

  sensors: {
    title: 'Sensoren',
    chest: 'Brust',
    trailArm: 'Hinterer Arm',
    club: 'Schläger',
    state: {
      searching: 'wird gesucht',
      found: 'gefunden',
      connecting: 'verbindet',
      preparing: 'wird vorbereitet',
      streaming: 'sendet',
      lost: 'verloren',
      retrying: 'versucht es wieder',
      ended: 'beendet',
    },
    rate: (hz, nominal) => `${hz} von ${nominal} Hz`,
    rateOnly: (hz) => `${hz} Hz`,
    noRate: 'noch keine Rate',
    lost: (pct) => `${pct} % verloren`,
    age: (ms) => `vor ${ms}`,
    battery: (pct) => `Akku ${pct} %`,
    none: 'Noch hat sich kein Sensor gemeldet.',
    lostSpoken: (name) => `Sensor ${name}: verloren.`,
    backSpoken: (name) => `Sensor ${name}: wieder da.`,
    silent: (name) =>
      `${name}: keine Messwerte. Das Üben geht weiter, der Sensor wird von selbst wieder gesucht; was du inzwischen tust, wird nicht gewertet.`,
    silentFor: (s) => `(${s} s)`,
  },

  desk,

  warnings: {
    title: 'Warnung',
    acknowledge: 'Ich habe das gelesen',
    stored: 'Mit der Einheit gespeichert.',
  },

  sound: {
    label: 'Ton',
    locked: 'Ton an',
    lockedWhy: 'Der Browser hält den Ton zurück, bis du eine Taste drückst oder tippst.',
    mute: 'Stumm',
    unmute: 'Ton an',
    muted: 'Stumm',
    volume: 'Lautstärke',
    rate: 'Sprechtempo',
    captions: 'Gesprochen',
    noCaption: 'Was gesprochen wird, steht auch hier.',
    noVoices: 'Dieser Computer hat keine deutsche Stimme: nur Töne und Untertitel.',
    try: 'Die Töne hören',
    tone: {
      listening: 'Hört zu',
      holdReached: 'Lang genug gehalten',
      passed: 'Gelungen',
      notPassed: 'Noch nicht',
      ballNext: 'Ball ist dran',
      warning: 'Warnung',
      sensorLost: 'Sensor verloren',
    },
  },
  spoken: { calibrated: 'Kalibriert.', begin: 'Fertig. Sprich den Ball an.' },

  look: {
    settings: 'Mehr',
    fallUnit: 'Fallweg des Schlägers in',
    units: { cm: 'Zentimetern', in: 'Zoll' },
    theme: 'Aussehen',
    system: 'Wie das System',
    light: 'Hell',
    dark: 'Dunkel',
    far: 'Fern',
    near: 'Nah',
    farWhy: 'Nur was aus 4 m lesbar ist (Taste F)',
    nearWhy: 'Mit Körper, Kurven und Messwerten (Taste F)',
    pause: 'Pause',
    resume: 'Weiter',
    close: 'Schließen',
    keys: 'Tasten',
    keyList: [
      ['F', 'Fern- oder Nahsicht'],
      ['P', 'Pause oder weiter'],
      ['M', 'stumm oder mit Ton'],
      ['H', 'es tut weh: Schmerz angeben'],
      ['R B I', 'das Letzte war eine Probe, ein Ball, nichts'],
      ['U', 'eine Korrektur zurücknehmen'],
      ['E', 'das Training beenden'],
      ['Enter', 'die neueste Warnung bestätigen'],
    ],
    keysOn: 'Einzelne Tasten gelten',
  },

  safety: {
    title: 'Sicherheit',
    parts: [
      {
        title: 'Vor jeder Einheit',
        items: [
          '3 m um dich herum müssen frei sein. Keine Kinder, Tiere oder Zuschauer.',
          'Geschlossene Schuhe, weicher Boden, nichts Zerbrechliches, genug Raum nach oben.',
          'Beginne mit einem kurzen oder gepolsterten Schläger.',
          WARNINGS['warm-up'],
        ],
      },
      {
        title:
          'Frag vor dieser Übung eine zugelassene medizinische Fachperson, wenn du eines davon hast oder hattest',
        items: [
          'eine Ausrenkung, eine instabile oder eine operierte Schulter',
          'einen operierten Rücken oder Osteoporose',
          'eine frische Verletzung',
          'oder wenn du schwanger bist',
        ],
      },
      {
        title: 'Schmerz',
        items: [
          'Bei 4 oder 5 von 10, oder 2 mehr als am Anfang: Hör für heute auf. Ist er morgen noch da, geh zu einer zugelassenen medizinischen Fachperson.',
          'Über 5, oder stechend, blockierend, nachgebend oder taub: Hör jetzt auf und hol dir Rat bei einer zugelassenen medizinischen Fachperson, bevor du wieder übst.',
          'Am nächsten Tag nicht abgeklungen: Ruh dich aus oder halbiere die Wiederholungen; hält er an, frag eine zugelassene medizinische Fachperson.',
        ],
      },
      {
        title: 'Hol dir jetzt ärztliche Hilfe bei',
        items: [
          'Schwäche im Bein, Taubheit im Schritt und an der Innenseite der Oberschenkel, verändertem Wasserlassen oder Stuhlgang',
          'Fieber mit Rückenschmerz, Schmerzen in der Brust, nach schwerem Sturz oder Schlag',
          'einem verformten oder tauben Arm',
        ],
      },
      {
        title: 'Was dieses Werkzeug nicht tut',
        items: [
          'Es kennt keinen sicheren Winkel, keine Last auf dem Rücken und keine Diagnose, und es verhindert keine Verletzung.',
          'Ein Sensor am Oberarm misst die Drehung zu klein; die Bereiche, vor denen er warnt, sind deine eigenen, von dir gemessen.',
        ],
      },
    ],
  },

  error: {
    title: 'Die Seite ist stehen geblieben',
    help: 'Etwas in der Seite ist kaputtgegangen. Der Dienst und deine Aufnahme laufen weiter. Lade die Seite neu.',
    reload: 'Neu laden',
    noAnswer: 'Der Dienst hat nicht geantwortet. Versuch es noch einmal.',
  },
  pain: {
    button: 'Schmerz',
    title: 'Schmerz jetzt?',
    paused: 'Das Training macht Pause.',
    send: 'Angeben',
    cancel: 'Kein Schmerz, weiter',
  },
  correct: {
    title: (index) => `Was war Wiederholung ${index}?`,
    measured: (kind) => `Erkannt als: ${kind}.`,
    kinds: {
      rehearsal: 'eine Probe',
      ball: 'ein Ball',
      practiceSwing: 'ein Übungsschwung',
      ignored: 'nichts zu zählen',
    },
    undo: 'Die letzte Korrektur zurücknehmen',
    close: 'So lassen',
    hint: 'Tippe auf ein Zeichen, um es zu korrigieren.',
  },
  end: {
    button: 'Ende',
    title: 'Dieses Training beenden?',
    text: 'Was gemessen ist, bleibt. Du kommst zur Zusammenfassung.',
    yes: 'Beenden',
    no: 'Weitermachen',
  },
  unit: { deg: '°', ms: 'ms', s: 's' },
};
