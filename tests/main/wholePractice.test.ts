import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import * as analysis from '../../src/analysis/analysis.ts';
import type { JudgedRepetition } from '../../src/coaching/judgement.ts';
import { DEFAULT_PLAN } from '../../src/coaching/plan.ts';
import { openKeeping } from '../../src/main/keeping.ts';
import { practiceHost } from '../../src/practice/host.ts';
import { livePractice } from '../../src/practice/livePractice.ts';
import type { ImuSample } from '../../src/sensors/sample.ts';
import { BleSource } from '../../src/sensors/sources/ble/bleSource.ts';
import { monotonicMs } from '../../src/sensors/sources/ble/messages.ts';
import { Radio } from '../../src/sensors/sources/ble/radio.ts';
import type { SensorSource } from '../../src/sensors/sources/source.ts';
import { SyntheticSource } from '../../src/sensors/sources/synthetic/index.ts';
import { analyseSession } from '../../src/sessions/analyseSession.ts';
import { CLOCK_FITS_FILE } from '../../src/sessions/clockFits.ts';
import { openSession } from '../../src/sessions/openSession.ts';
import { openStore } from '../../src/sessions/store/store.ts';
import { Body } from '../virtual-radio/body.ts';
import { nobleIsInstalled } from '../virtual-radio/install.ts';
import { inRoom } from '../virtual-radio/room.ts';

/** Both processes live so many times as fast; 1 for a practice as long as life. */
const SPEED = Number(process.env['STILLCATCH_SPEED'] ?? 3);
const ADDRESSES = ['c0:00:00:00:00:01', 'c0:00:00:00:00:02'];
const ROLES = ['chest', 'trailArm'] as const;
const WELL = {
  clubConfirmed: true,
  historyConfirmed: true,
  warmedUp: true,
  redFlag: false,
  pain: 0,
  signs: [],
} as const;
const PATIENCE = { timeout: 240_000, interval: 20 };
/** What the simulated student does when practising. */
const SCRIPT = 'r '.repeat(12);

const told = (repetitions: readonly JudgedRepetition[]) =>
  repetitions.map((r) => [
    r.kind,
    r.topS.toFixed(3),
    r.flags.join(),
    r.kind === 'rehearsal' ? r.verdict.passed : null,
  ]);

/** Spans in which a sensor's samples are missing, session s. */
const gapsOf = (samples: readonly ImuSample[], sensor: string): [number, number][] => {
  const times = samples.filter((s) => s.sensor === sensor).map((s) => s.timeS);
  return times.flatMap((t, i): [number, number][] =>
    i > 0 && t - (times[i - 1] ?? t) > 0.25 ? [[times[i - 1] ?? t, t]] : [],
  );
};

describe.skipIf(!nobleIsInstalled())('a whole practice by radio', () => {
  let folder: string;
  const ends: (() => unknown)[] = [];
  beforeEach(() => {
    folder = mkdtempSync(join(tmpdir(), 'stillcatch-'));
  });
  afterEach(async () => {
    for (const end of ends.splice(0).reverse()) await end();
    rmSync(folder, { recursive: true, force: true });
  });

  /** A simulated student who wears two virtual sensors, and the service's own way from them to the disk. */
  async function practise() {
    const nowMs = (): number => monotonicMs() * SPEED;
    const path = join(folder, 'body');
    const body = new Body(path, ROLES);
    ends.push(() => body.end());
    const perfect = { samplesPerPacket: 1, connectionIntervalS: 0, retryShare: 0, stallShare: 0 };
    const student = new SyntheticSource({
      seed: 5,
      prompted: true,
      rateHz: 104,
      speed: SPEED,
      script: SCRIPT,
      radio: { ...perfect, leastDelayS: 0, lostShare: 0 },
    });
    ends.push(() => student.stop());
    const ignore = (): void => undefined;
    student.start({ samples: (b) => body.move(b), event: ignore, link: ignore, end: ignore });
    const sensors = ADDRESSES.map((address) => ({ kind: 'openProfile' as const, address }));
    const room = { sensors, body: path, speed: SPEED, loss: 0.1 };
    const radio = new Radio(nowMs, inRoom(room, join(folder, 'lock')));
    ends.push(() => radio.stop());
    const worn = ADDRESSES.map((address, i) => ({
      role: ROLES[i] ?? 'chest',
      sensor: { id: address.replaceAll(':', ''), driver: 'openProfile' as const, name: `S${i}` },
    }));
    const source: SensorSource = Object.assign(new BleSource(radio, worn, nowMs), {
      ask: (step: string) => student.ask(step),
    });
    const practice = livePractice({
      practiceId: 'radio',
      source,
      chain: analysis,
      settings: { hand: 'right', plan: DEFAULT_PLAN, emitFrames: true },
      now: nowMs,
      guided: true,
    });
    const root = join(folder, 'data');
    const keeping = await openKeeping({ root, date: () => new Date(), say: ignore });
    const host = practiceHost({ first: practice });
    ends.push(() => host.stop());
    keeping.follow(host);
    practice.start();
    return { practice, radio, keeping, host, root };
  }

  type Practising = Awaited<ReturnType<typeof practise>>;

  /** Safety check, straps, sensors, calibration, own range left out, address. */
  async function lead({ practice }: Practising): Promise<void> {
    expect(practice.obey({ type: 'safety', answers: WELL })).toBeNull();
    practice.obey({ type: 'next' });
    await vi.waitFor(() => expect(practice.obey({ type: 'next' })).toBeNull(), PATIENCE);
    await vi.waitFor(() => expect(practice.view().stage).toBe('range'), PATIENCE);
    expect(practice.view().calibration.quality?.accepted).toBe(true);
    practice.obey({ type: 'skip' });
    await vi.waitFor(() => expect(practice.view().stage).toBe('practice'), PATIENCE);
  }

  const rehearsals = ({ practice }: Practising, n: number) =>
    vi.waitFor(() => expect(practice.view().ledger.rehearsals).toBeGreaterThanOrEqual(n), PATIENCE);

  /** Ends it, and looks at what is on the disk. */
  async function recorded({ practice, host, keeping, root }: Practising) {
    expect(practice.obey({ type: 'finish' })).toBeNull();
    await host.stop();
    await keeping.close();
    const store = await openStore(root);
    ends.push(() => store.close());
    const [kept] = await store.list();
    expect(kept).toMatchObject({ state: 'complete', id: practice.view().keeping?.sessionId });
    const result = await store.get(kept?.id ?? '');
    const session = await openSession(store.folderOf(kept?.id ?? ''));
    const samples: ImuSample[] = [];
    for await (const batch of session.inputs())
      for (const input of batch) if (input.kind === 'sample') samples.push(input.sample);
    const again = await analyseSession(session, DEFAULT_PLAN);
    const clocks = await session.clockFits();
    expect(session.files.names).toContain(CLOCK_FITS_FILE);
    await session.close();
    return { kept: result?.repetitions ?? [], again: again.repetitions, samples, clocks };
  }

  it('from the straps to the recording; killed with -9 in mid-session it goes on', async () => {
    const p = await practise();
    await lead(p);
    await rehearsals(p, 2);
    await vi.waitFor(() => expect(p.practice.view().phase.phase).toBe('top'), PATIENCE);
    const killed = p.radio.pid ?? 0;
    const before = p.practice.view();
    process.kill(killed, 'SIGKILL');
    const states = () => p.practice.view().sensors.map((s) => s.state);
    await vi.waitFor(() => expect(states()).toEqual(['lost', 'lost']), PATIENCE);
    // The practice's line of sensors shows state and reason; nothing else has ended.
    for (const s of p.practice.view().sensors) expect(s.reason).toMatch(/Bluetooth/);
    expect(p.practice.view()).toMatchObject({ stage: 'practice', source: { state: 'running' } });
    expect(p.practice.view().keeping).toMatchObject({ problem: null });
    await vi.waitFor(() => expect(states()).toEqual(['streaming', 'streaming']), PATIENCE);
    expect(p.radio.pid).not.toBe(killed);
    await rehearsals(p, before.ledger.rehearsals + 2);
    const { kept, again, samples, clocks } = await recorded(p);

    for (const role of ROLES) {
      expect(clocks[role]?.at(-1)?.untilS).toBeCloseTo(samples.at(-1)?.timeS ?? NaN, 0);
      for (const run of clocks[role] ?? []) expect(run.residualMs).toSatisfy(Number.isFinite);
    }
    const gaps = ROLES.flatMap((role) => gapsOf(samples, role));
    // the drop-out itself; a machine under load may add a short one
    const [fromS = 0, toS = 0] = gaps.toSorted(([a, b], [c, d]) => d - c - (b - a))[0] ?? [];
    expect(toS - fromS).toBeGreaterThan(0.5);
    const hit = (r: JudgedRepetition): boolean =>
      gaps.some(([from, to]) => r.startS < to && r.endS > from);
    for (const r of kept.filter(hit)) {
      expect(r.flags).toContain('gap');
      if (r.kind === 'rehearsal') expect(r.verdict.passed).toBeNull();
    }
    expect(kept.filter((r) => r.endS < fromS).length).toBeGreaterThanOrEqual(2);
    expect(kept.filter((r) => r.startS > toS).length).toBeGreaterThanOrEqual(1);
    expect(told(again)).toEqual(told(kept));
  });
});
