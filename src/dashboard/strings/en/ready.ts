import { type PainSign, RED_FLAGS, SAFETY_TEXTS } from '../../../coaching/safetyTexts.ts';

const WORN = { chest: 'chest', trailArm: 'trail arm', club: 'club' } as const;

/** The guided start. */
export const ready = {
  title: 'Get ready',
  steps: {
    safety: 'Safety',
    strap: 'Put on',
    check: 'Sensors',
    calibrate: 'Calibrate',
    range: 'Your range',
    address: 'Address',
  },
  optional: 'optional',
  done: 'done',
  next: 'Continue',
  again: 'Repeat',
  skip: 'Skip',
  quit: 'Cancel',

  safety: {
    title: 'Before you start',
    club: SAFETY_TEXTS.club.text,
    clubConfirm: 'Space, shoes, floor and club are ready',
    history: SAFETY_TEXTS.history.text,
    warmUp: SAFETY_TEXTS['warm-up'].text,
    warmUpConfirm: 'I have warmed up',
    redFlags: 'Do you have any of these now?',
    redFlagList: RED_FLAGS,
    start: 'Confirm',
  },

  pain: {
    now: 'Pain now',
    after: 'Pain after practice',
    scale: '0: no pain. 10: the worst you can imagine.',
    signs: 'Is it any of these?',
    signNames: {
      sharp: 'sharp',
      locking: 'locking',
      'giving way': 'giving way',
      numb: 'numb',
    } satisfies Record<PainSign, string>,
    choose: 'Choose a number first.',
  },

  strap: {
    title: 'Put on both sensors',
    chest: 'On your breastbone, flat and tight, so it does not rock when you breathe.',
    arm: (side: string) =>
      `On the outside of your ${side} upper arm (trail arm), just above the elbow. Low down it measures rotation best.`,
    side: { left: 'left', right: 'right' },
    tight: 'Over a tight shirt or on the skin. If a sensor slips, the numbers are wrong.',
    demo: 'Demo sensors: a simulated student wears them and follows the instructions.',
    chestLabel: 'Figure face on with a sensor on the breastbone',
    armLabel: 'Figure face on with a sensor above the elbow of the trail arm',
    done: 'Both sensors are on',
  },

  check: {
    title: 'Sensor check',
    well: 'OK',
    waiting: 'waiting',
    still: 'Stand still for a moment, so we can check the reading at rest.',
    rest: (value: string) => `${value} m/s² at rest`,
    problem: {
      'not-streaming': (sensor: keyof typeof WORN) =>
        `The ${WORN[sensor]} sensor is not sending data yet.`,
      stale: (sensor: keyof typeof WORN) => `The ${WORN[sensor]} sensor stopped sending data.`,
      slow: (sensor: keyof typeof WORN) =>
        `The ${WORN[sensor]} sensor is too slow. Move it closer to this computer.`,
      lossy: (sensor: keyof typeof WORN) =>
        `The ${WORN[sensor]} sensor is losing data. Move it closer, away from other wireless devices.`,
      norm: (sensor: keyof typeof WORN) =>
        `The ${WORN[sensor]} sensor should read 9.81 m/s² at rest. Check its unit and range settings.`,
      'no-rest': (sensor: keyof typeof WORN) =>
        `The ${WORN[sensor]} sensor has not been at rest yet. Stand still for a moment.`,
    },
    done: 'Calibrate',
  },

  guide: {
    word: {
      stand: 'Stand still',
      bow: 'Bow 3 times',
      armRaise: 'Raise arm',
      standAgain: 'Stand still',
      rangeRotation: 'Rotate your arm back',
      rangeBend: 'Bend forward',
      rangeTrailSide: 'Lean to your trail side',
      rangeLeadSide: 'Lean to your lead side',
      address: 'Address',
      recheckStand: 'Stand still',
      recheckBow: 'Bow once',
      recheckArmRaise: 'Raise arm',
    },
    detail: {
      stand: 'Upright, arms hanging, for three seconds.',
      bow: 'Three slow bows from the hips, 30 to 60 degrees.',
      armRaise: 'Trail arm straight, forward to shoulder height and down, three times.',
      standAgain: 'Upright again, arms hanging.',
      rangeRotation:
        'Trail arm out to the side at shoulder height, elbow bent. Rotate the forearm back only as far as is comfortable, pause, then lower the arm.',
      rangeBend: 'Bend forward only as far as is comfortable, pause, then come up.',
      rangeTrailSide: 'Lean to your trail side only as far as is comfortable, then come up.',
      rangeLeadSide: 'Lean to your lead side only as far as is comfortable, then come up.',
      address: 'Take your usual address with the club and hold still for two seconds.',
      recheckStand: 'Upright, arms hanging, for two seconds.',
      recheckBow: 'One slow bow from the hips, 30 to 60 degrees.',
      recheckArmRaise: 'Trail arm straight, forward to shoulder height and down, once.',
    },
    asked: 'Listen.',
    watching: 'Watching.',
    slow: 'Movement not detected yet. Do it again, or restart this step.',
    swapped: 'The other sensor moved. The two sensors seem to be swapped.',
    exchange: 'Swap them and press “Repeat”.',
    swapWhy: 'Or leave them where they are and let Stillcatch swap them:',
    count: (count: number, wanted: number) => `${count} of ${wanted}`,
    end: (deg: number) => `${deg}° so far`,
    solving: 'Calculating …',
    part: (index: number, of: number) => `Step ${index} of ${of}`,
  },

  calibrate: {
    refused: 'Calibration failed',
    doubt: 'Calibration usable, with a warning',
    explained: (pct: string) => `${pct} % of the rotation about one axis`,
    quality: 'Calibration: good',
    spokenAgain: 'Calibration failed. Please repeat it.',
  },

  recheck: {
    kept: (day: string) =>
      `Calibrated on ${day}. If both sensors are in the same place, a ten-second check is enough.`,
    begin: 'Quick check (10 seconds)',
    whole: 'Full calibration',
    spokenRefused: 'The check failed.',
  },

  range: {
    title: 'Your comfortable range',
    why: 'Four slow movements, as far as is comfortable. After that you get a warning near these limits. You are not compared with other people.',
    honest: 'A sensor on the upper arm shows less rotation than the arm makes.',
    start: 'Measure my range',
    skip: 'Not today',
    known: 'Last measured:',
    name: {
      externalRotationDeg: 'arm rotated outward',
      flexionDeg: 'bend forward',
      lateralTrailDeg: 'lean to the trail side',
      lateralLeadDeg: 'lean to the lead side',
    },
    spoken: 'Calibrated. You can measure your comfortable range now, or skip it.',
  },

  stopped: {
    title: 'No practice today',
    back: 'Back to today',
  },
};
