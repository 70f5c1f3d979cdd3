import type { Strings } from '../shape.ts';
import { HUB_LINK_TEXTS } from '../../../streaming/hubContract/linkTexts.ts';
import { translate } from '../translate.ts';
import { LINK } from './link.ts';
import { writing } from './numbers.ts';

const dateOf = writing.dayAndTime;

export const coach: Strings['coach'] = {
  title: 'Coach',
  said: (sentence) => translate(HUB_LINK_TEXTS, LINK, sentence),
  loading: 'Der Dienst wird gefragt …',
  lead: 'Verbinde diesen Computer mit dem Hub deines Coachs: Er sieht deine Trainings, schreibt dir und stellt deinen Plan ein. Alles geht auch ohne.',
  date: (ms) => dateOf(ms),
  connect: {
    title: 'Mit deinem Coach verbinden',
    hubUrl: 'Adresse des Hubs',
    code: 'Kopplungscode',
    codeWhy:
      'Von deiner eigenen Seite auf dem Hub, gültig für einen Computer und ein paar Minuten.',
    machine: 'Wie dieser Computer dort heißt',
    machineValue: 'Mein Computer',
    go: 'Verbinden',
    plain: 'Ohne Verschlüsselung weitermachen',
  },
  connected: (coachName, club) => `Verbunden mit ${coachName}${club === '' ? '' : ` von ${club}`}`,
  as: (student, machine, hubUrl) => `Als ${student}, von „${machine}“, mit ${hubUrl}.`,
  contact: (ms) =>
    ms === null ? 'Es wurde noch nichts abgeholt.' : `Letzter Kontakt: ${dateOf(ms)}.`,
  nextTry: (ms) => `Nächster Versuch von selbst: ${dateOf(ms)}.`,
  disconnect: 'Verbindung lösen',
  disconnectWhy:
    'Das Senden hört auf und der Hub vergisst diesen Computer. Was gesendet ist, bleibt dort, bis dein Coach oder du es dort löscht.',
  consent: {
    title: 'Was gesendet wird',
    what: (coachName) =>
      `Mit deiner Zustimmung geht jedes Training nach seinem Ende an ${coachName}: die Aufnahme der Sensoren, was daraus gemessen wurde, deine Notiz und der Schmerz, den du angegeben hast. Sonst nichts, und an niemanden sonst.`,
    older: 'Auch Einheiten von vor heute',
    agree: 'Ich stimme zu, sende meine Trainings',
    agreed: (ms, older) =>
      `Du hast am ${dateOf(ms)} zugestimmt${older ? ', auch für ältere Einheiten' : ', für Einheiten von da an'}.`,
    not: 'Du hast nicht zugestimmt: Es wird nichts gesendet.',
    stop: 'Nicht mehr senden',
    stopWhy: 'Was gesendet ist, bleibt auf dem Hub, bis dein Coach oder du es dort löscht.',
  },
  sending: {
    title: 'Einheiten',
    none: 'Es gibt noch keine Einheiten.',
    states: {
      sent: 'gesendet',
      sending: 'unterwegs',
      waiting: 'wartet aufs Senden',
      refused: 'nicht angenommen',
      kept: 'bleibt hier',
    },
    share: (share) => `${Math.round(share * 100)} %`,
    simulated: 'simuliert',
    counts: (sent, all) => `${sent} von ${all} sind bei deinem Coach.`,
  },
  plan: {
    title: 'Dein Plan',
    none: 'Dein Coach hat noch keinen Plan eingestellt; es gilt der übliche.',
    from: (by, ms) => `Von ${by}, seit ${dateOf(ms)}. Er zählt ab deinem nächsten Training.`,
    first: 'Der erste Plan.',
    next: (ms) => `Ein anderer Plan beginnt am ${dateOf(ms)}:`,
  },
  threads: {
    title: 'Was geschrieben wurde',
    none: 'Noch nichts.',
    session: (ms) => `Einheit vom ${dateOf(ms)}`,
    reviewed: (ms) => `Von deinem Coach angesehen am ${dateOf(ms)}.`,
    repetition: (index) => `Wiederholung ${index}`,
    me: 'Du',
    waiting: 'unterwegs',
    answer: 'Deine Antwort',
    send: 'Antworten',
  },
  wrote: (n) =>
    n === 1
      ? 'Dein Coach hat dir geschrieben.'
      : `Dein Coach hat dir ${n} Nachrichten geschrieben.`,
};
