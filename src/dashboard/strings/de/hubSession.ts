import { EXPORTS } from '../../../streaming/sessionsContract.ts';
import type { HubStrings } from '../hubShape.ts';
import { day, moment } from './hubShell.ts';
import { count, writing } from './numbers.ts';
import { sessions } from './sessions.ts';

const offset = (s: number): string => `${s < 0 ? '−' : '+'}${writing.decimal(Math.abs(s), 2)} s`;

export const session: HubStrings['session'] = {
  title: (name, ms) => `${name}, ${moment(ms)}`,
  opening: 'Training',
  step: (name) => `Was ${name} am Ende gesagt bekam`,
  warned: {
    'pain-now': (name, rating) =>
      rating === null
        ? `${name} bekam eine Schmerzwarnung und den Rat, für heute aufzuhören.`
        : `${name} gab Schmerz ${rating} von 10 an und bekam den Rat, für heute aufzuhören.`,
    'pain-high': (name, rating) =>
      rating === null
        ? `${name} meldete starken Schmerz oder ein Zeichen dafür. Das Training endete dort.`
        : `${name} gab Schmerz ${rating} von 10 oder ein Zeichen dafür an. Das Training endete dort.`,
    'pain-next-day': (name) =>
      `Der Schmerz von ${name} war seit dem letzten Training nicht abgeklungen.`,
    'red-flag': (name) =>
      `${name} meldete ein Zeichen, das dringend behandelt werden muss, und bekam den Rat, sofort Hilfe zu suchen.`,
    'own-range': (name) =>
      `Der Arm von ${name} kam nahe an das Ende des Bereichs, der als angenehm gemessen wurde.`,
    'trunk-own-range': (name) =>
      `Der Rumpf von ${name} ging über den Bereich hinaus, der als angenehm gemessen wurde.`,
    volume: (name) => `Mehr Wiederholungen als bei ${name} üblich oder geplant.`,
    missed: (name) => `${name} verpasste zwei der letzten fünf Fänge.`,
    club: (name) => `${name} hat Platz, Schuhe, Boden und Schläger nicht bestätigt.`,
    history: (name) => `${name} hat die Gesundheitsfragen nicht bestätigt.`,
    'warm-up': (name) => `${name} hat kein Aufwärmen angegeben.`,
  },
  bar: 'Ansehen',
  reviewed: (ms) => `Angesehen ${day(ms)}`,
  notReviewed: 'Nicht angesehen',
  mark: 'Als angesehen markieren',
  unmark: 'Als nicht angesehen markieren',
  next: 'Nächstes ansehen',
  nothingNext: 'Keine weiteren Trainings anzusehen.',
  older: 'Älteres Training',
  newer: 'Neueres Training',
  compareOlder: 'Mit dem älteren Training vergleichen',
  underPlan: (number, name) =>
    number === null
      ? `Gewertet nach dem damaligen Plan: ${name}.`
      : `Gewertet nach dem damaligen Plan: Version ${number}, ${name}.`,
  failed: 'Nicht neu ausgewertet',
  analyseAgain: 'Noch einmal auswerten',
  differences: 'Unterschiede zwischen dem Hub und dem Computer des Spielers',
  relabels: 'Von Hand korrigiert',
  relabelled: (index, kind, found, by, ms) =>
    `Wiederholung ${index}: ${kind}, erkannt als ${found}; ${by}, ${day(ms)}`,
  exports: sessions.exports,
  remove: 'Dieses Training löschen',
  removeTitle: 'Dieses Training löschen?',
  removeWhy:
    'Die Aufnahme, ihre Filme und Kommentare werden hier endgültig gelöscht. Die Kopie auf dem Computer des Spielers bleibt.',
  formats: EXPORTS.map((format) => [format, sessions.formats[format]] as const),

  kinds: { rehearsal: 'eine Übung', ball: 'ein Ball', ignore: 'nichts zu zählen' },
  originals: { rehearsal: 'eine Übung', ball: 'ein Ball', practiceSwing: 'ein Probeschwung' },
  relabel: {
    title: 'Was war es?',
    asFound: (kind) => `wie erkannt: ${kind}`,
    why: 'Es wird als die gewählte Art gemessen, gewertet und gezählt. Die erkannte Art bleibt sichtbar.',
    by: (by, ms) => `Gesetzt von ${by}, ${day(ms)}.`,
  },

  comments: {
    title: 'Kommentare',
    here: 'Zu dieser Wiederholung',
    none: 'Noch keine Kommentare.',
    noneHere: 'Noch keine Kommentare zu dieser Wiederholung.',
    write: 'Kommentar',
    reply: 'Antworten',
    replyTo: (name) => `Antwort an ${name}`,
    send: 'Senden',
    keys: 'Strg+Enter: senden. Escape: Feld verlassen.',
    on: 'Zu',
    pins: {
      repetition: (index) => `Wiederholung ${index}`,
      moment: (s) => `diesem Moment (${offset(s)})`,
      session: 'dem ganzen Training',
    },
    pinned: {
      repetition: (index) => `Wiederholung ${index}`,
      moment: (at, index) => (index === null ? `Bei ${at}` : `Wiederholung ${index}, bei ${at}`),
      session: 'Ganzes Training',
      note: 'Zur Notiz',
    },
    note: (name) => `Notiz von ${name}`,
    by: (name, role) => `${name}, ${role}`,
    role: { coach: 'Coach', student: 'Spieler' },
    at: moment,
    count: (n) => count(n, 'Kommentar', 'Kommentare'),
    remove: 'Löschen',
    removeOf: (text) => `Den Kommentar löschen: ${text.slice(0, 40)}`,
    block: 'Textbaustein',
    blockNone: 'Baustein einfügen',
    noBlocks: 'Deine Textbausteine erscheinen hier',
  },

  clips: {
    title: 'Film',
    none: 'Kein Film angehängt.',
    attach: 'Film anhängen (mp4 oder webm)',
    size: (mb) => `${mb} MB`,
    most: (mb) =>
      `Höchstens ${mb} MB. Wird mit dem Training gespeichert; nur ihr beide könnt ihn sehen.`,
    sending: (name) => `${name} wird gesendet …`,
    sent: 'Film angehängt.',
    tooBig: (mb) =>
      `Der Film ist größer als ${mb} MB. Kürze ihn auf die Wiederholungen, auf die es ankommt.`,
    wrongType:
      'Nur mp4- und webm-Filme lassen sich anhängen. Wenn ein Handy .mov-Dateien macht, stell seine Kamera auf das Format, das die meisten Geräte abspielen (H.264), oder wandle den Film in mp4 um.',
    by: (name) => `von ${name}`,
    choose: 'Film wählen',
    remove: 'Film löschen',
    view: 'Kameraansicht',
    views: { 'face-on': 'von vorn', 'down-the-line': 'entlang der Ziellinie' },
    viewUnknown: 'nicht festgelegt',
    inLine: 'Synchron: Der Regler bewegt Film und Kurven zusammen.',
    notInLine: 'Noch nicht synchron: Film und Kurven laufen getrennt.',
    outside: 'Der Film zeigt diesen Moment nicht.',
    open: 'Öffne eine Wiederholung, um den Film neben ihren Kurven zu sehen.',
    failed:
      'Dieser Browser kann den Film nicht abspielen. Filme in HEVC (H.265) spielen nur wenige Browser ab: Stell die Kamera des Handys auf H.264 oder wandle den Film in mp4 mit H.264 um.',
    back: 'Voriges Bild',
    on: 'Nächstes Bild',
    speed: 'Tempo',
    speeds: [
      [0.25, 'ein Viertel'],
      [0.5, 'halb'],
      [1, 'Echtzeit'],
    ],
    lineUp: {
      title: 'Film und Kurven synchronisieren',
      oneTitle: 'Mit einem Moment',
      oneCatch: 'Halte den Film beim Fangen an, dann:',
      oneImpact: 'Halte den Film im Treffmoment an, dann:',
      isCatch: 'Dieses Bild ist das Fangen',
      isImpact: 'Dieses Bild ist der Treffer',
      notSeen:
        'Das Fangen dieser Wiederholung wurde nicht erkannt. Nimm drei Momente oder eine andere Wiederholung.',
      threeTitle: 'Mit drei Momenten',
      three:
        'Dreimal Klopfen oder drei andere Momente, die in beiden zu sehen sind: Markiere jeden im Film und in den Kurven, in derselben Reihenfolge.',
      inFilm: (n) => `Im Film markieren (${n} von 3)`,
      inCurves: (n) => `In den Kurven markieren (${n} von 3)`,
      use: 'Damit synchronisieren',
      again: 'Neu beginnen',
      spread: (ms) => `Die drei Momente stimmen auf ${ms} ms überein.`,
      badSpread: (ms) =>
        `Die drei Momente unterscheiden sich um ${ms} ms. Einer davon ist wahrscheinlich ein anderer Moment.`,
      needAll: 'Markiere drei in jedem.',
      undo: 'Synchronisierung aufheben',
    },
    camera: {
      title: 'Vor dem Filmen',
      items: [
        'Entlang der Ziellinie: Kamera in Verlängerung der Standlinie, etwa auf Höhe des Brustbeins.',
        'Von vorn: Kamera rechtwinklig zur Standlinie, auf derselben Höhe.',
        'Auf einem Stativ, waagerecht, der ganze Körper und oben der Schläger im Bild.',
        'Tippe am Anfang im Bild dreimal auf den Brustsensor, um den Film später zu synchronisieren.',
        '60 Bilder pro Sekunde oder mehr, gutes Licht.',
      ],
      basis: 'Übliche Praxis, nicht aus einer Studie.',
    },
  },
  offset,
};
