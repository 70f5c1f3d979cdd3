import { tapSync } from '../../clock/tapSync.ts';
import type { SensorRole } from '../../sample.ts';
import { mostShaken } from '../../shake.ts';
import type { DeskCommand, DeskSync, DeskView } from '../deskView.ts';
import { fill } from '../../sentence.ts';
import { DESK_TEXTS, LINK_TEXTS } from '../radioTexts.ts';
import type { Assignment } from './bleSource.ts';
import { Candidate } from './candidate.ts';
import { deskSensors } from './deskSensors.ts';
import type { Wish } from './messages.ts';
import { type Pairings, withAssignment } from './pairings.ts';
import type { LinkStatus, Radio } from './radio.ts';
import { TapWait } from './tapWait.ts';

/** Most sensors connected at once to find out which is which. */
const MOST = 4;
const TICK_MS = 100;
const SYNC_MS = 8000;

/** What the sensors page needs of the radio. */
export type DeskRadio = Pick<Radio, 'status' | 'listen' | 'browse' | 'hold' | 'identify'>;

/** The sensors page's side of the radio: who is around, who is worn where, how well they do. */
export class SensorDesk {
  readonly #radio: DeskRadio;
  readonly #pairings: Pairings;
  readonly #nowMs: () => number;
  readonly #onsetMs: number;
  readonly #candidates = new Map<string, Candidate>();
  readonly #assigned: (all: readonly Assignment[]) => void;
  #pages = 0;
  #timer: NodeJS.Timeout | null = null;
  #unlisten: () => void = () => undefined;
  #release: () => void = () => undefined;
  #held = '';
  readonly #tap = new TapWait();
  #sync: DeskSync = { state: 'idle' };
  #syncSinceMs = 0;

  /** @param assigned told after every change of who is worn where */
  constructor(
    radio: DeskRadio,
    pairings: Pairings,
    nowMs: () => number,
    assigned: (all: readonly Assignment[]) => void = () => undefined,
  ) {
    this.#radio = radio;
    this.#pairings = pairings;
    this.#nowMs = nowMs;
    this.#onsetMs = nowMs();
    this.#assigned = assigned;
  }

  get view(): DeskView {
    const { problem, ready, recording, browsing } = this.#radio.status;
    const { unwritable } = this.#pairings;
    return {
      problem: problem && {
        message: problem.message,
        mend: problem.mend,
        detail: problem.detail.split('\n')[0] ?? '',
      },
      ready,
      recording,
      searching: browsing && ready,
      sensors: deskSensors(
        this.#radio.status,
        this.#pairings.all,
        this.#candidates,
        this.#s(this.#nowMs()),
        this.#candidates.size < MOST ? null : fill(LINK_TEXTS.waits, { most: MOST }),
      ),
      shaken: mostShaken(this.#levels()),
      tapFor: this.#tap.role,
      tapMissed: this.#tap.missed,
      notKept: unwritable === null ? null : fill(DESK_TEXTS['not-kept'], { file: unwritable }),
      sync: this.#sync,
    };
  }

  /** @returns what is wrong, in words; `null` where it was done */
  obey(command: DeskCommand): string | null {
    switch (command.type) {
      case 'open':
        return this.#open();
      case 'close':
        return this.#close();
      case 'assign':
        return this.#assign(command.id, command.role);
      case 'assign-by-tap':
        this.#tap.begin(command.role, this.#nowMs());
        return null;
      case 'cancel-tap':
        this.#tap.end();
        return null;
      case 'forget':
        return this.#set(this.#pairings.all.filter((a) => a.sensor.id !== command.id));
      case 'swap':
        return this.#set(this.#pairings.all.map(swapped));
      case 'identify':
        this.#radio.identify(command.id);
        return null;
      case 'sync':
        return this.#beginSync();
    }
  }

  #open(): null {
    this.#pages += 1;
    if (this.#pages > 1) return null;
    this.#unlisten = this.#radio.listen({
      changed: () => this.#hold(),
      setup: (id, setup) => this.#candidates.get(id)?.connect(setup),
      packet: (id, atMs, bytes) => this.#candidates.get(id)?.take(bytes, this.#s(atMs)),
      clock: (id, sentMs, ticks) => this.#candidates.get(id)?.answered(ticks, this.#s(sentMs)),
    });
    this.#radio.browse(true);
    this.#hold();
    this.#timer = setInterval(() => this.#tick(), TICK_MS);
    return null;
  }

  #close(): null {
    this.#pages = Math.max(0, this.#pages - 1);
    if (this.#pages > 0) return null;
    if (this.#timer) clearInterval(this.#timer);
    this.#unlisten();
    this.#radio.browse(false);
    this.#release();
    this.#held = '';
    this.#candidates.clear();
    this.#tap.end();
    this.#sync = { state: 'idle' };
    return null;
  }

  /** Worn sensors and the nearest of the others are kept connected, to be felt. */
  #hold(): void {
    const worn = this.#pairings.all.map((a) => a.sensor);
    const ids = new Set(worn.map((w) => w.id));
    const near = [...this.#radio.status.seen]
      .filter((s) => !ids.has(s.id) && !this.#candidates.has(s.id))
      .sort((a, b) => b.rssiDbm - a.rssiDbm)
      .map(({ id, driver, name }) => ({ id, driver, name }));
    const gone = new Set(this.#radio.status.links.filter(isGone).map((l) => l.wish.id));
    const kept = [...this.#candidates.values()]
      .map((c) => c.wish)
      .filter((w) => !ids.has(w.id) && !gone.has(w.id));
    this.#keep([...worn, ...kept, ...near].slice(0, Math.max(MOST, worn.length)));
  }

  #keep(wishes: readonly Wish[]): void {
    const key = wishes.map((w) => w.id).join();
    if (key === this.#held) return;
    this.#held = key;
    const wanted = new Set(wishes.map((w) => w.id));
    for (const id of this.#candidates.keys()) if (!wanted.has(id)) this.#candidates.delete(id);
    for (const wish of wishes)
      if (!this.#candidates.has(wish.id)) this.#candidates.set(wish.id, new Candidate(wish));
    const releaseOld = this.#release;
    this.#release = this.#radio.hold(wishes);
    releaseOld();
    for (const { wish, setup } of this.#radio.status.links) {
      const candidate = this.#candidates.get(wish.id);
      if (setup && candidate && !candidate.connected) candidate.connect(setup);
    }
  }

  #assign(id: string, role: SensorRole): string | null {
    const seen = this.#radio.status.seen.find((s) => s.id === id);
    const wish = this.#candidates.get(id)?.wish ?? seen;
    if (!wish) return DESK_TEXTS.gone;
    this.#tap.end();
    return this.#set(withAssignment(this.#pairings.all, { role, sensor: wish }));
  }

  #set(all: readonly Assignment[]): null {
    this.#pairings.set(all);
    this.#assigned(this.#pairings.all);
    // What was found about the two clocks was about the sensors that were worn then.
    this.#sync = { state: 'idle' };
    if (this.#pages > 0) this.#hold();
    return null;
  }

  #tick(): void {
    const now = this.#nowMs();
    const { recording, browsing } = this.#radio.status;
    if (!recording && !browsing) this.#radio.browse(true);
    this.#tap.tick(now);
    const { role } = this.#tap;
    const shaken = role && mostShaken(this.#levels());
    if (shaken) this.#assign(shaken, role);
    if (this.#sync.state === 'listening') this.#listenOn(now);
  }

  #beginSync(): string | null {
    const [a, b] = this.#pair();
    if (!a?.connected || !b?.connected) return DESK_TEXTS['both-first'];
    a.beginTaps();
    b.beginTaps();
    this.#syncSinceMs = this.#nowMs();
    this.#sync = { state: 'listening', leftS: SYNC_MS / 1000 };
    return null;
  }

  #listenOn(now: number): void {
    const leftS = Math.ceil((SYNC_MS - (now - this.#syncSinceMs)) / 1000);
    const [a, b] = this.#pair();
    if (leftS > 0) this.#sync = { state: 'listening', leftS };
    else if (a && b) this.#sync = judged(tapSync(a.endTaps(), b.endTaps()));
    else this.#sync = { state: 'failed', reason: DESK_TEXTS['too-short'] };
  }

  #pair(): (Candidate | undefined)[] {
    return (['chest', 'trailArm'] as const).map((role) => {
      const worn = this.#pairings.all.find((a) => a.role === role);
      return worn && this.#candidates.get(worn.sensor.id);
    });
  }

  #levels(): Map<string, number> {
    const nowS = this.#s(this.#nowMs());
    return new Map([...this.#candidates].map(([id, c]) => [id, c.level(nowS)]));
  }

  #s(atMs: number): number {
    return (atMs - this.#onsetMs) / 1000;
  }
}

/** Not worn, and not heard any more: its place is free for one that is there. */
const isGone = ({ state, reason }: LinkStatus): boolean =>
  state === 'searching' && reason === LINK_TEXTS['not-seen'];

const swapped = (a: Assignment): Assignment => {
  if (a.role === 'chest') return { ...a, role: 'trailArm' };
  return a.role === 'trailArm' ? { ...a, role: 'chest' } : a;
};

function judged(sync: ReturnType<typeof tapSync>): DeskSync {
  return sync.ok
    ? { state: 'done', offsetMs: sync.offsetMs, taps: sync.taps }
    : { state: 'failed', reason: DESK_TEXTS[sync.reason] };
}
