import { comparisonTexts, differenceText, pairTexts } from '../../coaching/differenceText.ts';
import {
  type FallUnit,
  fallText,
  measureText,
  percentText,
  targetText,
} from '../../coaching/measureText.ts';
import { changeShown } from '../../coaching/sinceLast.ts';
import type { LedgerStatus } from '../../coaching/ledger.ts';
import { coach } from './de/coach.ts';
import { counts } from './de/counts.ts';
import { names, said } from './de/core.ts';
import { desk } from './de/desk.ts';
import { drafts } from './de/drafts.ts';
import { figure } from './de/figure.ts';
import { handsFree } from './de/handsFree.ts';
import { help } from './de/help.ts';
import { home } from './de/home.ts';
import { measureInfo } from './de/measures.ts';
import { VALUE_WORDS, count, writing } from './de/numbers.ts';
import { plan } from './de/plan.ts';
import { planPage } from './de/planPage.ts';
import { count as sessionCount, interrupted } from './de/underWay.ts';
import { progress } from './de/progress.ts';
import { ready } from './de/ready.ts';
import { review } from './de/review.ts';
import { NOT_A_MEDICAL_DEVICE, OTHERS_COME_FIRST, WARNINGS } from './de/safety.ts';
import { safetyForm, stop } from './de/stop.ts';
import { sessionNotes, sessions } from './de/sessions.ts';
import { secondScreen } from './de/secondScreen.ts';
import { settings } from './de/settings.ts';
import { after, today } from './de/today.ts';
import type { Strings } from './shape.ts';

const { tag, decimal, written, day, weekday, dayAndTime } = writing;

/** What comes next, for the screen and the voice. */
function next({ next: due, toGo, ballTooEarly }: LedgerStatus): string {
  if (toGo === null)
    return ballTooEarly ? 'Noch keine Bälle. Vorerst nur Übungen.' : 'Nur Übungen.';
  if (due === 'ball') return toGo === 1 ? 'Schlag einen Ball.' : `Schlag ${toGo} Bälle.`;
  if (ballTooEarly)
    return `Der Ball kam zu früh. Erst ${toGo === 1 ? 'eine Übung' : `${toGo} Übungen`}.`;
  return toGo === 1 ? 'Noch eine Übung.' : `Noch ${toGo} Übungen.`;
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
  /** Stems: „den {trail}en Arm“, „nach {lead}s“. */
  sides: {
    right: { trail: 'recht', lead: 'link' },
    left: { trail: 'link', lead: 'recht' },
  },
  skip: 'Direkt zum Inhalt',
  nav: {
    label: 'Seiten',
    today: 'Heute',
    ready: 'Vorbereiten',
    after: 'Danach',
    practice: 'Üben',
    sessions: 'Trainings',
    progress: 'Verlauf',
    plan: 'Plan',
    coach: 'Coach',
    sensors: 'Sensoren',
    screen: 'Zweiter Bildschirm',
    safety: 'Sicherheit',
    help: 'Hilfe',
  },

  coach,
  counts,
  drafts,
  ready,
  today,
  after,
  sessions,
  sessionNotes,
  safetyForm,
  stop,
  review,
  progress,
  plan,
  planPage,
  settings,
  secondScreen,
  figure,
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
    replay: 'Aufgezeichnetes Training',
    simulatedWhy: 'Niemand bewegt sich: Alle Zahlen unten kommen von simulierten Sensoren.',
    replayWhy: 'Niemand bewegt sich: Alle Zahlen unten kommen aus einer Aufnahme.',
    failed: (reason) => `Die Sensoren senden nicht mehr: ${reason}`,
    starting: 'Warten auf die ersten Messwerte.',
  },

  count: sessionCount,
  interrupted,

  connection: {
    connecting: 'Verbindung mit Stillcatch auf diesem Computer …',
    lost: 'Verbindung verloren.',
    lostHelp:
      'Die Verbindung wird automatisch neu aufgebaut. Klappt das nicht, starte Stillcatch neu, mit „npm start“ im Projektordner. Du siehst die zuletzt empfangenen Daten.',
    last: 'Letzter Stand',
    backSpoken: 'Wieder verbunden.',
    age: (s) => `${s} s alt`,
    sensor: 'keine Verbindung',
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
    waiting: 'Sprich den Ball an und halte still.',
    address: 'Du stehst still. Schwing nach oben, wenn du bereit bist.',
    ball: 'Die Übungen sind fertig. Ein voller Schwung mit Ball.',
    backswing: 'Stopp oben und halte still.',
    hold: (target) => `Halte oben ${target} still`,
    letGo: 'Erst die Brust: drehen und beugen. Lass den Schläger fallen.',
    released: 'Fang ihn, mit dem Arm noch nach außen gedreht.',
    caught: 'Geh zurück ins Ansprechen.',
    paused: 'Nichts wird gezählt. Mit P geht es weiter.',
    ended: 'Das Training ist zu Ende. Deine Ergebnisse bleiben hier.',
    refused: 'Kalibrierung fehlgeschlagen. Der Grund steht unten. Beginne noch einmal.',
  },
  step: {
    'calibration-stand': 'Still stehen',
    'calibration-bow': '3-mal vorbeugen',
    'calibration-armRaise': 'Arm heben',
    'address-reference': 'Ansprechen',
  },
  stepDetail: {
    'calibration-stand': 'Aufrecht, Arme hängen.',
    'calibration-bow': 'Dreimal langsam aus der Hüfte vorbeugen.',
    'calibration-armRaise':
      'Den {trail}en Arm gestreckt nach vorn heben, bis Schulterhöhe, dreimal.',
    'address-reference': 'Sprich an wie immer. Halte zwei Sekunden still.',
  },

  hold: {
    label: 'Halten',
    value: (s, target) => `${s} von ${target} s`,
    target: (s) => `${s} s`,
    noTarget: 'Dein Plan hat keine Haltezeit.',
  },

  verdict: {
    title: 'Letzte Wiederholung',
    none: 'Noch keine Wiederholung',
    noneDetail: 'Hier erscheint dein erstes Ergebnis.',
    passed: 'Gelungen',
    notPassed: 'Noch nicht',
    notScored: 'Nicht gewertet',
    ball: 'Ball',
    practiceSwing: 'Probeschwung',
    ignored: 'Nicht gezählt',
    ballDetail: 'Ball aufgezeichnet.',
    practiceSwingDetail: 'Aufgezeichnet, nicht gezählt.',
    number: (index) => `Wiederholung ${index}`,
  },

  ledger: {
    title: 'Zähler',
    rehearsals: (n) => count(n, 'Übung', 'Übungen'),
    balls: (n) => count(n, 'Ball', 'Bälle'),
    kept: (ratio, asked) => `${ratio} Übungen pro Ball (Plan: ${asked})`,
    noRatio: (asked) => `Plan: ${asked}`,
    asked: (rehearsals, balls) => `${rehearsals} zu ${balls}`,
    next,
    empty: 'Hier erscheinen deine Übungen und Bälle.',
    entry: {
      passed: 'Übung gelungen',
      notPassed: 'Übung noch nicht gelungen',
      notScored: 'Übung nicht gewertet',
      ball: 'Ball',
      practiceSwing: 'Probeschwung',
      ignored: 'nicht gezählt',
    },
    legend:
      'Gefüllter Kreis: gelungen. Offener Kreis: noch nicht. Dreieck: Ball. Strich: Probeschwung.',
  },

  measures: {
    title: 'Messwerte der letzten Wiederholung',
    none: 'Hier erscheinen die Messwerte jeder Wiederholung mit den Zielwerten des Plans.',
    in: 'im Zielbereich',
    out: 'außerhalb des Zielbereichs',
    info: measureInfo,
    label: (key) => {
      const { name, term } = measureInfo[key];
      return term === null ? name : `${name} (${term})`;
    },
    value: (key, value, target) => measureText(key, value, target, VALUE_WORDS),
    fall: (cm, unit: FallUnit, measured) =>
      `Der Schläger ist etwa ${fallText(cm, unit)} gefallen: ${
        measured
          ? 'aus dem freien Fall, den der Schlägersensor gemessen hat.'
          : 'so weit fällt ein losgelassener Gegenstand vom Loslassen bis zum Fangen; weniger, wenn die Hand ihn bremst.'
      }`,
    change: (change) => changeShown(change, VALUE_WORDS),
    difference: (key, difference) => differenceText(key, difference, VALUE_WORDS),
    pair: (key, here, beside) => pairTexts(key, here, beside, VALUE_WORDS),
    compared: (key, earlier, later, interval) =>
      comparisonTexts(key, earlier, later, interval, VALUE_WORDS),
    percent: (ratio, edges) => percentText(ratio, edges, VALUE_WORDS),
    target: (key, target) => targetText(key, target, VALUE_WORDS),
    noTarget: 'kein Zielwert',
    missedCatch: 'verpasst',
    plusMinus: (key, amount) => {
      const { unit } = measureInfo[key];
      return `±${written(String(amount))}${unit === '°' ? '°' : ` ${unit}`}`;
    },
    basis: 'Klammer: Zielwert (Festlegung fürs Training, keine veröffentlichte Norm).',
    whisker: 'Strich: Messfehler.',
    explain: 'Über diesen Messwert',
    sure: (text) => `Genauigkeit: ${text}.`,
    cannotSee: 'Nicht gemessen:',
  },

  body: {
    title: 'Körper',
    faceOn: 'Von vorn',
    downTheLine: 'Entlang der Ziellinie',
    ghost: 'Gestrichelt: dein Ansprechen',
    none: 'Die Figuren erscheinen nach der Kalibrierung.',
    describe: (view, flexion, turn) => `${view}: Brust ${flexion} vorgebeugt, ${turn} gedreht`,
  },

  curves: {
    title: 'Letzte 10 Sekunden',
    flexion: 'Flexion',
    turn: 'Drehung zum Ziel',
    kept: 'Armdrehung ab oben',
    now: 'jetzt',
    none: 'Die Kurven beginnen nach der Kalibrierung.',
    describe:
      'Drei Kurven über die letzten zehn Sekunden: Flexion, Drehung und Armdrehung, in Grad',
  },

  sensors: {
    title: 'Sensoren',
    chest: 'Brust',
    trailArm: 'Arm',
    club: 'Schläger',
    state: {
      searching: 'wird gesucht',
      found: 'gefunden',
      connecting: 'verbindet',
      preparing: 'wird vorbereitet',
      streaming: 'sendet',
      lost: 'verloren',
      retrying: 'verbindet neu',
      ended: 'beendet',
    },
    rate: (hz, nominal) => `${hz} von ${nominal} Hz`,
    rateOnly: (hz) => `${hz} Hz`,
    noRate: 'noch keine Daten',
    lost: (pct) => `${pct} % verloren`,
    age: (ms) => `vor ${ms}`,
    battery: (pct) => `Akku ${pct} %`,
    none: 'Noch sendet kein Sensor.',
    lostSpoken: (name) => `Sensor ${name}: verloren.`,
    backSpoken: (name) => `Sensor ${name}: wieder da.`,
    silent: (name) =>
      `${name}: keine Daten. Dein Training läuft weiter und der Sensor verbindet sich automatisch neu. Bis dahin werden Wiederholungen nicht gewertet.`,
    silentFor: (s) => `(${s} s)`,
  },

  desk,

  warnings: {
    title: 'Warnung',
    acknowledge: 'Ich habe das gelesen',
    stored: 'Mit dem Training gespeichert.',
  },

  sound: {
    label: 'Ton',
    locked: 'Ton an',
    lockedWhy: 'Dein Browser gibt den Ton erst frei, wenn du eine Taste drückst oder tippst.',
    mute: 'Stumm',
    unmute: 'Ton an',
    muted: 'Stumm',
    volume: 'Lautstärke',
    rate: 'Sprechtempo',
    captions: 'Gesprochen',
    noCaption: 'Gesprochenes steht auch hier.',
    noVoices: 'Dieser Computer hat keine deutsche Stimme. Es gibt nur Töne und Untertitel.',
    try: 'Töne abspielen',
    tone: {
      listening: 'Hört zu',
      holdReached: 'Lang genug gehalten',
      passed: 'Gelungen',
      notPassed: 'Noch nicht',
      ballNext: 'Ball ist dran',
      warning: 'Warnung',
      sensorLost: 'Sensor verloren',
      connectionLost: 'Verbindung verloren',
    },
  },
  spoken: { calibrated: 'Kalibriert.', begin: 'Fertig. Sprich den Ball an.' },

  look: {
    settings: 'Mehr',
    fallUnit: 'Fallweg des Schlägers in',
    units: { cm: 'Zentimetern', in: 'Zoll' },
    theme: 'Design',
    system: 'Wie das System',
    light: 'Hell',
    dark: 'Dunkel',
    far: 'Fern',
    near: 'Nah',
    farWhy: 'Große Schrift, lesbar aus 4 m (Taste F)',
    nearWhy: 'Mit Körper, Kurven und Messwerten (Taste F)',
    pause: 'Pause',
    resume: 'Weiter',
    close: 'Schließen',
    keys: 'Tastenkürzel',
    keyList: [
      ['F', 'Fern- oder Nahsicht'],
      ['P', 'Pause oder weiter'],
      ['M', 'stumm oder mit Ton'],
      ['H', 'es tut weh: Schmerz angeben'],
      ['R B I', 'letzte Wiederholung war: Übung, Ball, nichts'],
      ['U', 'Korrektur rückgängig machen'],
      ['E', 'das Training beenden'],
      ['Enter', 'die neueste Warnung bestätigen, egal wo der Fokus ist'],
    ],
    keysOn: 'Tastenkürzel an',
  },

  safety: {
    title: 'Sicherheit',
    parts: [
      {
        title: 'Vor jedem Training',
        items: [
          '3 m um dich herum müssen frei sein. Keine Kinder, Tiere oder Zuschauer.',
          'Geschlossene Schuhe, weicher Boden, nichts Zerbrechliches, genug Raum nach oben.',
          'Beginne mit einem kurzen oder gepolsterten Schläger.',
          WARNINGS['warm-up'],
        ],
      },
      {
        title:
          'Frag vor dieser Übung in der Arztpraxis oder Physiotherapie nach, wenn du eines davon hast oder hattest',
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
          'Bei 4 oder 5 von 10, oder 2 mehr als am Anfang: Hör für heute auf. Ist er morgen noch da, geh in eine Arztpraxis oder zur Physiotherapie.',
          'Über 5, oder stechend, blockierend, nachgebend oder taub: Hör jetzt auf und hol dir Rat in der Arztpraxis oder Physiotherapie, bevor du wieder übst.',
          'Am nächsten Tag nicht abgeklungen: Ruh dich aus oder halbiere die Wiederholungen; hält er an, frag in der Arztpraxis oder Physiotherapie nach.',
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
        title: 'Was dieses Programm nicht kann',
        items: [
          'Es kann dir keinen sicheren Winkel und keine Belastung deines Rückens nennen, stellt keine Diagnose und verhindert keine Verletzung.',
          'Ein Sensor am Oberarm zeigt weniger Drehung, als da ist. Gewarnt wird nur vor deinen eigenen Bereichen, die du selbst gemessen hast.',
        ],
      },
    ],
  },

  error: {
    title: 'Etwas ist schiefgegangen',
    help: 'Diese Seite funktioniert nicht mehr. Dein Training und die Aufnahme laufen weiter. Lade die Seite neu.',
    reload: 'Neu laden',
    noAnswer: 'Keine Antwort von Stillcatch. Versuch es noch einmal.',
  },
  pain: {
    button: 'Schmerz',
    title: 'Schmerz jetzt?',
    paused: 'Das Training macht Pause.',
    send: 'Speichern',
    cancel: 'Kein Schmerz, weiter',
  },
  correct: {
    title: (index) => `Was war Wiederholung ${index}?`,
    measured: (kind) => `Erkannt als: ${kind}.`,
    kinds: {
      rehearsal: 'eine Übung',
      ball: 'ein Ball',
      practiceSwing: 'ein Probeschwung',
      ignored: 'nichts zu zählen',
    },
    undo: 'Letzte Korrektur rückgängig machen',
    close: 'Abbrechen',
    hint: 'Tippe auf eine Markierung, um sie zu korrigieren.',
  },
  end: {
    button: 'Ende',
    title: 'Dieses Training beenden?',
    text: 'Deine Ergebnisse sind gespeichert. Danach siehst du die Zusammenfassung.',
    yes: 'Beenden',
    no: 'Weitermachen',
  },
  unit: { deg: '°', ms: 'ms', s: 's' },
};
