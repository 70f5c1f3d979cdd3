import { type PainSign, RED_FLAGS, SAFETY_TEXTS } from '../../../coaching/safetyTexts.ts';

const WORN = { chest: 'chest', trailArm: 'trail arm', club: 'club' } as const;

/** The guided start. */
export const ready = {
  title: 'Get ready',
  steps: {
    safety: 'Safety',
    strap: 'Strap on',
    check: 'Sensors',
    calibrate: 'Calibrate',
    range: 'Own range',
    address: 'Address',
  },
  optional: 'optional',
  done: 'done',
  next: 'Go on',
  again: 'Once more',
  skip: 'Leave out',
  quit: 'Leave',

  safety: {
    title: 'Before you start',
    club: SAFETY_TEXTS.club.text,
    clubConfirm: 'It is so: space, shoes, floor and club',
    history: SAFETY_TEXTS.history.text,
    historyConfirm: 'None of these, or I have asked',
    warmUp: SAFETY_TEXTS['warm-up'].text,
    warmUpConfirm: 'I am warm',
    redFlags: 'Do you have one of these now?',
    redFlagList: RED_FLAGS,
    redFlagYes: 'Yes, one of these',
    start: 'Confirm',
  },

  pain: {
    now: 'Pain now',
    after: 'Pain after the practice',
    scale: '0 none, 10 the worst you can think of',
    signs: 'Is it one of these?',
    signNames: {
      sharp: 'sharp',
      locking: 'locking',
      'giving way': 'giving way',
      numb: 'numb',
    } satisfies Record<PainSign, string>,
    choose: 'Choose a number first.',
  },

  strap: {
    title: 'Strap on two sensors',
    chest: 'On the breastbone, flat and tight, so that it does not rock when you breathe.',
    arm: (side: string) =>
      `On the outside of your ${side} upper arm, just above the elbow: the trail arm. Low down it under-reads rotation least.`,
    side: { left: 'left', right: 'right' },
    tight: 'Over a tight shirt or on the skin. A sensor that slips spoils every number.',
    demo: 'Demo sensors: a simulated student wears them and does what you are asked.',
    chestLabel: 'Figure face on with a sensor on the breastbone',
    armLabel: 'Figure face on with a sensor above the elbow of the trail arm',
    done: 'Both are on',
  },

  check: {
    title: 'Are both sensors well?',
    well: 'well',
    waiting: 'waiting',
    still: 'Stand still for a moment, so that the length at rest can be read.',
    rest: (value: string) => `${value} m/s² at rest`,
    problem: {
      'not-streaming': (sensor: keyof typeof WORN) =>
        `The ${WORN[sensor]} sensor sends nothing yet.`,
      stale: (sensor: keyof typeof WORN) => `The ${WORN[sensor]} sensor has fallen silent.`,
      slow: (sensor: keyof typeof WORN) =>
        `The ${WORN[sensor]} sensor is slower than it should be. Bring it closer to this computer.`,
      lossy: (sensor: keyof typeof WORN) =>
        `The ${WORN[sensor]} sensor loses too much. Bring it closer, away from other radios.`,
      norm: (sensor: keyof typeof WORN) =>
        `At rest the ${WORN[sensor]} sensor should read 9.81 m/s². Its unit or its range is set wrong.`,
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
      rangeRotation: 'Turn it out',
      rangeBend: 'Bend down',
      rangeTrailSide: 'Trail side',
      rangeLeadSide: 'Lead side',
      address: 'Address',
      recheckStand: 'Stand still',
      recheckBow: 'Bow once',
      recheckArmRaise: 'Raise arm',
    },
    detail: {
      stand: 'Upright, arms hanging, for three seconds.',
      bow: 'Three slow bows from the hips, 30 to 60 degrees.',
      armRaise: 'Trail arm straight, forward to shoulder height and down, three times.',
      standAgain: 'Once more upright, arms hanging.',
      rangeRotation:
        'Trail arm out to the side at shoulder height, elbow bent. Turn the forearm back only as far as is comfortable, stay for a moment, lower the arm.',
      rangeBend: 'Bend forward only as far as is comfortable, stay for a moment, come up.',
      rangeTrailSide: 'Bend to your trail side only as far as is comfortable, come up.',
      rangeLeadSide: 'Bend to your lead side only as far as is comfortable, come up.',
      address: 'Take your own address with the club and be still for two seconds.',
      recheckStand: 'Upright, arms hanging, for two seconds.',
      recheckBow: 'One slow bow from the hips, 30 to 60 degrees.',
      recheckArmRaise: 'Trail arm straight, forward to shoulder height and down, once.',
    },
    asked: 'Listen.',
    watching: 'Watching.',
    slow: 'Nothing like it was seen yet. Do it once more, or start this part again.',
    swapped: 'The other sensor moved: the two seem to be swapped.',
    exchange: 'Exchange them and press “Once more”.',
    swapWhy: 'Or leave them where they are, and Stillcatch takes each for the other:',
    count: (count: number, wanted: number) => `${count} of ${wanted}`,
    end: (deg: number) => `${deg}° so far`,
    solving: 'Working it out.',
    part: (index: number, of: number) => `Step ${index} of ${of}`,
  },

  calibrate: {
    refused: 'Not good enough to measure with',
    doubt: 'Good enough, with a doubt',
    explained: (pct: string) => `${pct} % of the turning about one axis`,
    quality: 'How good it was',
    spokenAgain: 'Calibration refused. Please do it once more.',
  },

  recheck: {
    kept: (day: string) =>
      `Calibrated on ${day}. If both sensors sit as they sat then, a check of ten seconds will do.`,
    begin: 'Check, ten seconds',
    whole: 'Calibrate in full',
    spokenRefused: 'The check was refused.',
  },

  range: {
    title: 'Your own comfortable range',
    why: 'Four slow movements to your own comfortable ends. From then on you are warned before you come near them. Nothing is compared with other people.',
    honest: 'A sensor on the upper arm reads less than the arm turns.',
    start: 'Measure my range',
    skip: 'Not today',
    known: 'From before:',
    name: {
      externalRotationDeg: 'arm turned out',
      flexionDeg: 'bend forward',
      lateralTrailDeg: 'bend to the trail side',
      lateralLeadDeg: 'bend to the lead side',
    },
    spoken: 'Calibrated. You may measure your own range now, or leave it out.',
  },

  stopped: {
    title: 'No practice today',
    back: 'Back to today',
  },
};
