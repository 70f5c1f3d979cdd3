import type { Strings } from '../shape.ts';
import { HUB_LINK_TEXTS } from '../../../streaming/hubContract/linkTexts.ts';
import { translate } from '../translate.ts';
import { LINK } from './link.ts';
import { writing } from './numbers.ts';

const dateOf = writing.dayAndTime;

export const coach: Strings['coach'] = {
  title: 'Coach',
  said: (sentence) => translate(HUB_LINK_TEXTS, LINK, sentence),
  loading: 'Wird geladen …',
  lead: 'Verbinde diesen Computer mit dem Hub deines Coachs. Dein Coach kann dann deine Trainings sehen, dir schreiben und deinen Plan festlegen. Alles funktioniert auch ohne Coach.',
  date: (ms) => dateOf(ms),
  connect: {
    title: 'Mit deinem Coach verbinden',
    hubUrl: 'Hub-Adresse',
    code: 'Kopplungscode',
    codeWhy:
      'Du findest ihn auf deiner eigenen Seite im Hub. Er gilt für einen Computer und ein paar Minuten.',
    machine: 'Name dieses Computers',
    machineValue: 'Mein Computer',
    go: 'Verbinden',
    plain: 'Ohne Verschlüsselung verbinden',
  },
  connected: (coachName, club) => `Verbunden mit ${coachName}${club === '' ? '' : `, ${club}`}`,
  as: (student, machine, hubUrl) =>
    `Du: ${student}. Dieser Computer: „${machine}“. Hub: ${hubUrl}.`,
  contact: (ms) => (ms === null ? 'Noch kein Kontakt.' : `Letzter Kontakt: ${dateOf(ms)}.`),
  nextTry: (ms) => `Nächster automatischer Versuch: ${dateOf(ms)}.`,
  disconnect: 'Trennen',
  disconnectWhy:
    'Das Senden endet und der Hub entfernt diesen Computer. Was du gesendet hast, bleibt auf dem Hub, bis du oder dein Coach es dort löscht.',
  consent: {
    title: 'Was gesendet wird',
    what: (coachName) =>
      `Wenn du zustimmst, wird jedes Training nach dem Ende an ${coachName} gesendet: die Sensoraufnahme, die Messwerte, deine Notiz und deine Schmerzangabe. Sonst nichts, und an niemanden sonst.`,
    older: 'Auch Trainings von vor heute senden',
    agree: 'Ich stimme zu, meine Trainings senden',
    agreed: (ms, older) =>
      `Du hast am ${dateOf(ms)} zugestimmt${older ? ', auch für ältere Trainings' : ', für Trainings ab diesem Zeitpunkt'}.`,
    not: 'Du hast nicht zugestimmt. Es wird nichts gesendet.',
    stop: 'Senden beenden',
    stopWhy: 'Was du gesendet hast, bleibt auf dem Hub, bis du oder dein Coach es dort löscht.',
  },
  sending: {
    title: 'Trainings',
    none: 'Noch keine Trainings.',
    states: {
      sent: 'gesendet',
      sending: 'wird gesendet',
      waiting: 'wartet',
      refused: 'abgelehnt',
      kept: 'nicht geteilt',
    },
    share: (share) => `${Math.round(share * 100)} %`,
    simulated: 'simuliert',
    counts: (sent, all) => `${sent} von ${all} an deinen Coach gesendet.`,
  },
  plan: {
    title: 'Dein Plan',
    none: 'Dein Coach hat noch keinen Plan festgelegt. Es gilt der Standardplan.',
    from: (by, ms) => `Von ${by}, seit ${dateOf(ms)}. Er gilt ab deinem nächsten Training.`,
    first: 'Der erste Plan.',
    next: (ms) => `Ein neuer Plan beginnt am ${dateOf(ms)}:`,
  },
  threads: {
    title: 'Nachrichten',
    none: 'Noch keine Nachrichten.',
    session: (ms) => `Training vom ${dateOf(ms)}`,
    reviewed: (ms) => `Dein Coach hat es am ${dateOf(ms)} angesehen.`,
    repetition: (index) => `Wiederholung ${index}`,
    onNote: 'zu deiner Notiz',
    me: 'Du',
    waiting: 'wird gesendet',
    answer: 'Deine Antwort',
    send: 'Antworten',
  },
  wrote: (n) =>
    n === 1 ? 'Neue Nachricht von deinem Coach.' : `${n} neue Nachrichten von deinem Coach.`,
};
