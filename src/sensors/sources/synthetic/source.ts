import { type Random, seededRandom } from '../../../math/random.ts';
import type { SensorLink, SensorSource, SourceListener } from '../source.ts';
import { type SimulationOptions, checkOptions, forSensor } from './options.ts';
import { type SimulatedSensor, SIMULATED_SENSORS } from './worn.ts';
import { createScene } from './scene.ts';
import { type ScriptToken, parseScript } from './script.ts';
import { promptedTokens } from './prompted.ts';
import { type Movement, type SimulationItem, streamScene } from './simulation.ts';

/** The clock and timer of the playback; tests give their own. */
export interface Timers {
  /** ms, any origin, never backwards. */
  now(): number;
  /** Calls back once after `delayMs`; returns a function that cancels. */
  after(delayMs: number, callback: () => void): () => void;
}

const HOST_TIMERS: Timers = {
  now: () => performance.now(),
  after: (delayMs, callback) => {
    const timer = setTimeout(callback, delayMs);
    return () => clearTimeout(timer);
  },
};

export interface SyntheticSourceOptions extends SimulationOptions {
  /** Goes on for ever with a varied mix after the script; default false. */
  readonly endless?: boolean;
  /** Stands about and does what `ask` says, instead of a script with its own calibration; default false. */
  readonly prompted?: boolean;
  /** Times as fast as life; default 1. `Infinity` does not wait at all. */
  readonly speed?: number;
  readonly timers?: Timers;
}

// Most items handed over before the event loop gets its turn.
const MOST_AT_ONCE = 400;
// s between reports of the links' battery and signal
const REPORT_EACH_S = 10;

/** The demonstration's mix: good ones, each fault, balls, practice swings and what lies between. */
const MIXES = [
  'r r b r:short-hold r b:0.5 idle',
  'r r:arms-first b:0.8 waggle r r b',
  'r r:losing-lean tee r b:0.6 p r',
  'r:losing-rotation r b walk r r b:0.9',
  'r r:missed-catch r b:0.4 abort r p b',
];

function* endlessTokens(random: Random): Generator<ScriptToken> {
  for (;;) {
    const order = MIXES.map((mix) => ({ mix, at: random() })).sort((a, b) => a.at - b.at);
    for (const { mix } of order) yield* parseScript(mix);
  }
}

function* both(
  first: Iterable<ScriptToken>,
  then: Iterable<ScriptToken>,
): Generator<ScriptToken, void> {
  yield* first;
  yield* then;
}

const NAMES: Record<SimulatedSensor, string> = { chest: 'demo chest', trailArm: 'demo arm' };

/** Plays a simulated session as if two sensors were worn. */
export class SyntheticSource implements SensorSource {
  readonly kind = 'synthetic';
  readonly simulated = true;
  readonly #options: SyntheticSourceOptions;
  readonly #timers: Timers;
  readonly #speed: number;
  #items: Generator<SimulationItem> | null = null;
  #next: SimulationItem | null = null;
  #startedMs = 0;
  #reportedS = 0;
  #cancel: () => void = () => {};
  readonly #wishes: string[] = [];

  /** @throws ScriptError, RangeError on options that cannot be played. */
  constructor(options: SyntheticSourceOptions) {
    checkOptions(options);
    parseScript(options.script ?? '');
    this.#speed = options.speed ?? 1;
    if (!(this.#speed > 0)) throw new RangeError(`speed must be above 0, not ${this.#speed}`);
    this.#options = options;
    this.#timers = options.timers ?? HOST_TIMERS;
  }

  start(listener: SourceListener): void {
    if (this.#items) throw new Error('the source has been started already');
    const { seed, prompted, unrest } = this.#options;
    const options = prompted ? { ...this.#options, calibration: 'none' as const } : this.#options;
    this.#items = streamScene(createScene(seed, unrest), options, this.#tokens());
    this.#startedMs = this.#timers.now();
    this.#report(listener, 'connecting', 0);
    this.#report(listener, 'streaming', 0);
    this.#advance();
    this.#tick(listener);
  }

  ask(step: string): void {
    if (this.#options.prompted) this.#wishes.push(step);
  }

  #tokens(): Iterable<ScriptToken | Movement> {
    const { seed, script, endless, prompted } = this.#options;
    const mix = endlessTokens(seededRandom(seed + 1));
    const asked = parseScript(script ?? '');
    const tokens = endless ? both(asked, mix) : asked;
    return prompted ? promptedTokens(this.#wishes, both(asked, mix)) : tokens;
  }

  stop(): Promise<void> {
    this.#cancel();
    this.#items?.return(undefined);
    this.#next = null;
    return Promise.resolve();
  }

  #advance(): void {
    const step = this.#items?.next();
    this.#next = step && !step.done ? step.value : null;
  }

  #tick(listener: SourceListener): void {
    const dueS = ((this.#timers.now() - this.#startedMs) / 1000) * this.#speed;
    for (let n = 0; this.#next && n < MOST_AT_ONCE; n++) {
      if (this.#speed !== Infinity && this.#next.timeS > dueS) break;
      const item = this.#next;
      this.#emit(listener, item);
      if (this.#next !== item) return; // stopped by the listener
      this.#advance();
    }
    this.#schedule(listener, dueS);
  }

  #schedule(listener: SourceListener, dueS: number): void {
    if (!this.#next) {
      this.#report(listener, 'ended', this.#reportedS);
      listener.end(null);
      return;
    }
    const waitS = this.#speed === Infinity ? 0 : (this.#next.timeS - dueS) / this.#speed;
    this.#cancel = this.#timers.after(Math.max(0, waitS * 1000), () => this.#tick(listener));
  }

  #emit(listener: SourceListener, item: SimulationItem): void {
    if (item.kind === 'event') listener.event(item.event);
    if (item.kind !== 'packet') return;
    listener.samples(item.packet.samples);
    if (item.timeS - this.#reportedS < REPORT_EACH_S) return;
    this.#reportedS = item.timeS;
    this.#report(listener, 'streaming', item.timeS);
  }

  #report(listener: SourceListener, state: SensorLink['state'], atS: number): void {
    for (const sensor of SIMULATED_SENSORS) {
      const order = sensor === 'chest' ? 0 : 1;
      listener.link({
        sensor,
        state,
        name: NAMES[sensor],
        id: `simulated ${this.#options.seed} ${sensor}`,
        reason: state === 'ended' ? 'The simulated session is over.' : null,
        // A full charge lasts some eight hours.
        batteryPct: Math.max(5, Math.round(94 - 7 * order - (atS / 28_800) * 90)),
        rssiDbm: Math.round(-56 - 5 * order - 3 * Math.sin(atS / 37 + order)),
        nominalRateHz: forSensor(this.#options.rateHz ?? 100, sensor),
      });
    }
  }
}
