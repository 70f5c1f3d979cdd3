import type { Strings } from '../shape.ts';
import { PAIN_SIGNS, RED_FLAGS, WARNINGS } from './safety.ts';

const WORN = { chest: 'Brustsensor', trailArm: 'Armsensor', club: 'Schlägersensor' } as const;

export const ready: Strings['ready'] = {
  title: 'Vorbereiten',
  steps: {
    safety: 'Sicherheit',
    strap: 'Anlegen',
    check: 'Sensoren',
    calibrate: 'Kalibrieren',
    range: 'Dein Bereich',
    address: 'Ansprechen',
  },
  optional: 'optional',
  done: 'fertig',
  next: 'Weiter',
  again: 'Wiederholen',
  skip: 'Überspringen',
  quit: 'Abbrechen',

  safety: {
    title: 'Bevor du anfängst',
    club: WARNINGS.club,
    clubConfirm: 'Platz, Schuhe, Boden und Schläger sind bereit',
    history: WARNINGS.history,
    warmUp: WARNINGS['warm-up'],
    warmUpConfirm: 'Ich habe mich aufgewärmt',
    redFlags: 'Hast du jetzt etwas davon?',
    redFlagList: RED_FLAGS,
    start: 'Bestätigen',
  },

  pain: {
    now: 'Schmerz jetzt',
    after: 'Schmerz nach dem Training',
    scale: '0: kein Schmerz. 10: der stärkste, den du dir vorstellen kannst.',
    signs: 'Ist es so ein Schmerz?',
    signNames: PAIN_SIGNS,
    choose: 'Wähle erst eine Zahl.',
  },

  strap: {
    title: 'Zwei Sensoren anlegen',
    chest: 'Auf dem Brustbein, flach und fest, sodass er beim Atmen nicht wackelt.',
    arm: (side) =>
      `Außen an deinem ${side} Oberarm, knapp über dem Ellbogen. So weit unten misst er die Drehung am besten.`,
    side: { left: 'linken', right: 'rechten' },
    tight:
      'Über einem engen Shirt oder auf der Haut. Wenn ein Sensor rutscht, stimmen die Zahlen nicht.',
    demo: 'Demosensoren: Eine simulierte Person trägt sie und folgt den Anweisungen.',
    chestLabel: 'Figur von vorn mit einem Sensor auf dem Brustbein',
    armLabel: 'Figur von vorn mit einem Sensor über dem {trail}en Ellbogen',
    done: 'Beide Sensoren sitzen',
  },

  check: {
    title: 'Sensorprüfung',
    well: 'OK',
    waiting: 'wartet',
    still: 'Steh einen Moment still, damit wir den Messwert in Ruhe prüfen können.',
    rest: (value) => `${value} m/s² in Ruhe`,
    problem: {
      'not-streaming': (sensor) => `Der ${WORN[sensor]} sendet noch nichts.`,
      stale: (sensor) => `Der ${WORN[sensor]} sendet nicht mehr.`,
      slow: (sensor) => `Der ${WORN[sensor]} ist zu langsam. Bring ihn näher an diesen Computer.`,
      lossy: (sensor) =>
        `Der ${WORN[sensor]} verliert Daten. Bring ihn näher, weg von anderen Funkgeräten.`,
      norm: (sensor) =>
        `In Ruhe sollte der ${WORN[sensor]} 9,81 m/s² messen. Prüfe seine Maßeinheit und seinen Messbereich.`,
      'no-rest': (sensor) => `Der ${WORN[sensor]} war noch nicht in Ruhe. Steh einen Moment still.`,
    },
    done: 'Kalibrieren',
  },

  guide: {
    word: {
      stand: 'Still stehen',
      bow: '3-mal vorbeugen',
      armRaise: 'Arm heben',
      standAgain: 'Still stehen',
      rangeRotation: 'Arm zurückdrehen',
      rangeBend: 'Vorbeugen',
      rangeTrailSide: 'Nach {trail}s neigen',
      rangeLeadSide: 'Nach {lead}s neigen',
      address: 'Ansprechen',
      recheckStand: 'Still stehen',
      recheckBow: 'Einmal vorbeugen',
      recheckArmRaise: 'Arm heben',
    },
    detail: {
      stand: 'Aufrecht, Arme hängen, drei Sekunden lang.',
      bow: 'Dreimal langsam aus der Hüfte vorbeugen, 30 bis 60 Grad.',
      armRaise:
        'Den {trail}en Arm gestreckt nach vorn heben, bis Schulterhöhe, und wieder senken, dreimal.',
      standAgain: 'Noch einmal aufrecht, Arme hängen.',
      rangeRotation:
        'Heb den {trail}en Arm seitlich auf Schulterhöhe, Ellbogen gebeugt. Dreh den Unterarm nur so weit zurück, wie es angenehm ist. Kurz halten, dann den Arm senken.',
      rangeBend: 'Beug dich nur so weit vor, wie es angenehm ist. Kurz halten, dann aufrichten.',
      rangeTrailSide: 'Neig dich nur so weit nach {trail}s, wie es angenehm ist, dann aufrichten.',
      rangeLeadSide: 'Neig dich nur so weit nach {lead}s, wie es angenehm ist, dann aufrichten.',
      address: 'Sprich den Ball mit dem Schläger an wie immer und halte zwei Sekunden still.',
      recheckStand: 'Aufrecht, Arme hängen, zwei Sekunden lang.',
      recheckBow: 'Einmal langsam aus der Hüfte vorbeugen, 30 bis 60 Grad.',
      recheckArmRaise:
        'Den {trail}en Arm gestreckt nach vorn heben, bis Schulterhöhe, und wieder senken, einmal.',
    },
    asked: 'Hör zu.',
    watching: 'Messung läuft.',
    slow: 'Die Bewegung wurde noch nicht erkannt. Mach sie noch einmal, oder beginne diesen Schritt neu.',
    swapped: 'Der andere Sensor hat sich bewegt. Die beiden sind wohl vertauscht.',
    exchange: 'Tausche sie und drücke „Wiederholen“.',
    swapWhy: 'Oder lass sie, wo sie sind, und Stillcatch tauscht sie im Programm:',
    count: (count, wanted) => `${count} von ${wanted}`,
    end: (deg) => `${deg}° bisher`,
    solving: 'Wird berechnet …',
    part: (index, of) => `Schritt ${index} von ${of}`,
  },

  calibrate: {
    refused: 'Kalibrierung fehlgeschlagen',
    doubt: 'Kalibrierung brauchbar, mit Hinweis',
    explained: (pct) => `${pct} % der Drehung um eine Achse`,
    quality: 'Kalibrierung: gut',
    spokenAgain: 'Kalibrierung fehlgeschlagen. Bitte wiederhole sie.',
  },

  recheck: {
    kept: (day) =>
      `Kalibriert am ${day}. Wenn beide Sensoren an derselben Stelle sitzen, genügt eine Prüfung von zehn Sekunden.`,
    begin: 'Schnelle Prüfung (10 Sekunden)',
    whole: 'Volle Kalibrierung',
    spokenRefused: 'Die Prüfung ist fehlgeschlagen.',
  },

  range: {
    title: 'Dein angenehmer Bereich',
    why: 'Vier langsame Bewegungen, so weit es angenehm ist. Danach wirst du in der Nähe dieser Grenzen gewarnt. Du wirst nicht mit anderen verglichen.',
    honest: 'Ein Sensor am Oberarm zeigt weniger Drehung, als der Arm macht.',
    start: 'Meinen Bereich messen',
    skip: 'Heute nicht',
    known: 'Zuletzt gemessen:',
    name: {
      externalRotationDeg: 'Arm nach außen gedreht',
      flexionDeg: 'Vorbeugen',
      lateralTrailDeg: 'Seitneigung vom Ziel weg',
      lateralLeadDeg: 'Seitneigung zum Ziel hin',
    },
    spoken: 'Kalibriert. Du kannst jetzt deinen angenehmen Bereich messen oder das überspringen.',
  },

  stopped: {
    title: 'Heute kein Training',
    back: 'Zurück zu „Heute“',
  },
};
