export type ToneName =
  | 'listening'
  | 'holdReached'
  | 'passed'
  | 'notPassed'
  | 'ballNext'
  | 'warning'
  | 'sensorLost'
  | 'connectionLost';

/** Something that can sound a tone. */
export interface Tones {
  /** Sounds the tone at `volume` 0..1; the tone's length, ms. */
  play(name: ToneName, volume: number): number;
}

/** One note of a tone. */
export interface Note {
  /** ms from the start of the tone. */
  readonly atMs: number;
  readonly lengthMs: number;
  /** Hz at its start and end. */
  readonly fromHz: number;
  readonly toHz: number;
  readonly shape: OscillatorType;
}

const note = (
  atMs: number,
  lengthMs: number,
  fromHz: number,
  toHz = fromHz,
  shape: OscillatorType = 'sine',
): Note => ({ atMs, lengthMs, fromHz, toHz, shape });

/** Each distinct in rhythm, not only in pitch; none longer than 250 ms. */
export const TONES: Record<ToneName, readonly Note[]> = {
  listening: [note(0, 45, 880)],
  holdReached: [note(0, 200, 440, 740)],
  passed: [note(0, 100, 587), note(130, 120, 880)],
  notPassed: [note(0, 100, 440), note(130, 120, 294)],
  ballNext: [note(0, 55, 240, 130, 'triangle'), note(150, 55, 240, 130, 'triangle')],
  warning: [note(0, 60, 660), note(95, 60, 660), note(190, 60, 660)],
  sensorLost: [note(0, 250, 500, 180)],
  connectionLost: [note(0, 150, 500, 300), note(185, 60, 180)],
};

/** A soft start, so that no tone startles: ms until it is at full strength. */
export const SOFT_START_MS = 12;

export const toneLengthMs = (name: ToneName): number =>
  Math.max(...TONES[name].map((n) => n.atMs + n.lengthMs));

function sound(context: AudioContext, { atMs, lengthMs, ...n }: Note, volume: number): void {
  const from = context.currentTime + atMs / 1000;
  const to = from + lengthMs / 1000;
  const oscillator = new OscillatorNode(context, { type: n.shape, frequency: n.fromHz });
  oscillator.frequency.exponentialRampToValueAtTime(n.toHz, to);
  const gain = new GainNode(context, { gain: 0 });
  gain.gain.setValueAtTime(0, from);
  gain.gain.linearRampToValueAtTime(volume * 0.5, from + SOFT_START_MS / 1000);
  gain.gain.setValueAtTime(volume * 0.5, to - SOFT_START_MS / 1000);
  gain.gain.linearRampToValueAtTime(0, to);
  oscillator.connect(gain).connect(context.destination);
  oscillator.start(from);
  oscillator.stop(to);
}

/** Tones by WebAudio. The context starts with the person's first key or tap. */
export function webAudioTones(context: AudioContext): Tones {
  return {
    play: (name, volume) => {
      if (volume > 0 && context.state === 'running') {
        for (const n of TONES[name]) sound(context, n, volume);
      }
      return toneLengthMs(name);
    },
  };
}
