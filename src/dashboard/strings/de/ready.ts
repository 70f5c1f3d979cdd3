import type { Strings } from '../shape.ts';
import { PAIN_SIGNS, RED_FLAGS, WARNINGS } from './safety.ts';

const WORN = { chest: 'Brustsensor', trailArm: 'Armsensor', club: 'Schlägersensor' } as const;

export const ready: Strings['ready'] = {
  title: 'Bereit machen',
  steps: {
    safety: 'Sicherheit',
    strap: 'Anlegen',
    check: 'Sensoren',
    calibrate: 'Kalibrieren',
    range: 'Eigener Bereich',
    address: 'Ansprechen',
  },
  optional: 'freiwillig',
  done: 'fertig',
  next: 'Weiter',
  again: 'Noch einmal',
  skip: 'Auslassen',
  quit: 'Verlassen',

  safety: {
    title: 'Bevor du anfängst',
    club: WARNINGS.club,
    clubConfirm: 'So ist es: Platz, Schuhe, Boden und Schläger',
    history: WARNINGS.history,
    historyConfirm: 'Nichts davon, oder ich habe gefragt',
    warmUp: WARNINGS['warm-up'],
    warmUpConfirm: 'Ich habe mich aufgewärmt',
    redFlags: 'Hast du jetzt etwas davon?',
    redFlagList: RED_FLAGS,
    redFlagYes: 'Ja, eins davon',
    start: 'Bestätigen',
  },

  pain: {
    now: 'Schmerz jetzt',
    after: 'Schmerz nach dem Training',
    scale: '0 keiner, 10 der schlimmste, den du dir vorstellen kannst',
    signs: 'Ist es so ein Schmerz?',
    signNames: PAIN_SIGNS,
    choose: 'Wähle erst eine Zahl.',
  },

  strap: {
    title: 'Zwei Sensoren anlegen',
    chest: 'Auf dem Brustbein, flach und fest, sodass er beim Atmen nicht wackelt.',
    arm: (side) =>
      `Außen an deinem ${side} Oberarm, knapp über dem Ellbogen: der hintere Arm. So weit unten entgeht ihm am wenigsten von der Drehung.`,
    side: { left: 'linken', right: 'rechten' },
    tight: 'Über einem engen Shirt oder auf der Haut. Ein Sensor, der rutscht, verdirbt jede Zahl.',
    demo: 'Demosensoren: Eine simulierte Person trägt sie und tut, worum du gebeten wirst.',
    chestLabel: 'Figur von vorn mit einem Sensor auf dem Brustbein',
    armLabel: 'Figur von vorn mit einem Sensor über dem Ellbogen des hinteren Arms',
    done: 'Beide sitzen',
  },

  check: {
    title: 'Sind beide Sensoren in Ordnung?',
    well: 'in Ordnung',
    waiting: 'wartet',
    still: 'Steh einen Moment still, damit der Wert in Ruhe gemessen werden kann.',
    rest: (value) => `${value} m/s² in Ruhe`,
    problem: {
      'not-streaming': (sensor) => `Der ${WORN[sensor]} sendet noch nichts.`,
      stale: (sensor) => `Der ${WORN[sensor]} ist verstummt.`,
      slow: (sensor) =>
        `Der ${WORN[sensor]} ist langsamer, als er sein sollte. Bring ihn näher an diesen Computer.`,
      lossy: (sensor) =>
        `Der ${WORN[sensor]} verliert zu viele Messwerte. Bring ihn näher, weg von anderem Funk.`,
      norm: (sensor) =>
        `In Ruhe sollte der ${WORN[sensor]} 9,81 m/s² messen. Seine Einheit oder sein Messbereich ist falsch eingestellt.`,
      'no-rest': (sensor) => `Der ${WORN[sensor]} war noch nicht in Ruhe. Steh einen Moment still.`,
    },
    done: 'Kalibrieren',
  },

  guide: {
    word: {
      stand: 'Still stehen',
      bow: '3-mal verbeugen',
      armRaise: 'Arm heben',
      standAgain: 'Still stehen',
      rangeRotation: 'Nach außen drehen',
      rangeBend: 'Vorbeugen',
      rangeTrailSide: 'Hintere Seite',
      rangeLeadSide: 'Vordere Seite',
      address: 'Ansprechen',
      recheckStand: 'Still stehen',
      recheckBow: 'Einmal verbeugen',
      recheckArmRaise: 'Arm heben',
    },
    detail: {
      stand: 'Aufrecht, Arme hängen, drei Sekunden lang.',
      bow: 'Drei langsame Verbeugungen aus der Hüfte, 30 bis 60 Grad.',
      armRaise: 'Hinterer Arm gestreckt, nach vorn auf Schulterhöhe und wieder hinunter, dreimal.',
      standAgain: 'Noch einmal aufrecht, Arme hängen.',
      rangeRotation:
        'Hinterer Arm seitlich auf Schulterhöhe, Ellbogen gebeugt. Dreh den Unterarm nur so weit zurück, wie es angenehm ist, bleib einen Moment, senk den Arm.',
      rangeBend: 'Beug dich nur so weit vor, wie es angenehm ist, bleib einen Moment, komm hoch.',
      rangeTrailSide:
        'Neig dich nur so weit zu deiner hinteren Seite, wie es angenehm ist, komm hoch.',
      rangeLeadSide:
        'Neig dich nur so weit zu deiner vorderen Seite, wie es angenehm ist, komm hoch.',
      address: 'Sprich den Ball mit dem Schläger an wie immer und sei zwei Sekunden still.',
      recheckStand: 'Aufrecht, Arme hängen, zwei Sekunden lang.',
      recheckBow: 'Eine langsame Verbeugung aus der Hüfte, 30 bis 60 Grad.',
      recheckArmRaise:
        'Hinterer Arm gestreckt, nach vorn auf Schulterhöhe und wieder hinunter, einmal.',
    },
    asked: 'Hör zu.',
    watching: 'Ich schaue zu.',
    slow: 'Davon war noch nichts zu sehen. Mach es noch einmal oder beginne diesen Teil von vorn.',
    swapped: 'Der andere Sensor hat sich bewegt: Die beiden sind wohl vertauscht.',
    exchange: 'Tausche sie und drücke „Noch einmal“.',
    swapWhy: 'Oder lass sie, wo sie sind, und Stillcatch nimmt jeden für den anderen:',
    count: (count, wanted) => `${count} von ${wanted}`,
    end: (deg) => `${deg}° bisher`,
    solving: 'Wird ausgerechnet.',
    part: (index, of) => `Schritt ${index} von ${of}`,
  },

  calibrate: {
    refused: 'Nicht gut genug zum Messen',
    doubt: 'Gut genug, mit einem Vorbehalt',
    explained: (pct) => `${pct} % der Drehung um eine Achse`,
    quality: 'Wie gut es war',
    spokenAgain: 'Kalibrierung abgelehnt. Bitte mach sie noch einmal.',
  },

  recheck: {
    kept: (day) =>
      `Kalibriert am ${day}. Sitzen beide Sensoren wie damals, genügt eine Prüfung von zehn Sekunden.`,
    begin: 'Prüfen, zehn Sekunden',
    whole: 'Ganz kalibrieren',
    spokenRefused: 'Die Prüfung wurde abgelehnt.',
  },

  range: {
    title: 'Dein eigener angenehmer Bereich',
    why: 'Vier langsame Bewegungen bis zu deinen eigenen angenehmen Enden. Von da an wirst du gewarnt, bevor du ihnen nahe kommst. Nichts wird mit anderen verglichen.',
    honest: 'Ein Sensor am Oberarm misst weniger, als sich der Arm dreht.',
    start: 'Meinen Bereich messen',
    skip: 'Heute nicht',
    known: 'Von früher:',
    name: {
      externalRotationDeg: 'Arm nach außen gedreht',
      flexionDeg: 'Vorbeugen',
      lateralTrailDeg: 'Neigung zur hinteren Seite',
      lateralLeadDeg: 'Neigung zur vorderen Seite',
    },
    spoken: 'Kalibriert. Du kannst jetzt deinen eigenen Bereich messen oder das auslassen.',
  },

  stopped: {
    title: 'Heute kein Training',
    back: 'Zurück zu heute',
  },
};
