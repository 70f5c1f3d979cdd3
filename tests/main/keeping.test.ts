import { execFileSync } from 'node:child_process';
import { readFileSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, it, onTestFinished, vi } from 'vitest';
import * as analysis from '../../src/analysis/analysis.ts';
import { DEFAULT_PLAN } from '../../src/coaching/plan.ts';
import { type Keeping, type KeepingOptions, openKeeping } from '../../src/main/keeping.ts';
import { type PracticeHost, practiceHost } from '../../src/practice/host.ts';
import { livePractice } from '../../src/practice/livePractice.ts';
import type { SensorSource } from '../../src/sensors/sources/source.ts';
import { SyntheticSource } from '../../src/sensors/sources/synthetic/index.ts';
import { analyseSession } from '../../src/sessions/analyseSession.ts';
import { openSession } from '../../src/sessions/openSession.ts';
import { type SessionStore, openStore } from '../../src/sessions/store/store.ts';
import { scratch } from '../sessions/makeSession.ts';
import { smallDisk } from '../sessions/store/smallDisk.ts';
import { HandSource } from '../practice/scripted.ts';
import { realService } from './realService.ts';

const SPEED = 100;
const PATIENCE = { timeout: 240_000, interval: 20 };

const demo = (): SensorSource =>
  new SyntheticSource({ seed: 1, hand: 'right', speed: SPEED, endless: true });

const practise = (source: SensorSource) =>
  livePractice({
    practiceId: `p${Math.random()}`,
    source,
    chain: analysis,
    settings: { hand: 'right', plan: DEFAULT_PLAN, emitFrames: true },
    now: () => performance.now(),
  });

async function keep(more: Partial<KeepingOptions> = {}): Promise<Keeping> {
  return openKeeping({ root: scratch(), date: () => new Date(), say: () => undefined, ...more });
}

function begin(keeping: Keeping, source: SensorSource = demo()): PracticeHost {
  const host = practiceHost({ first: practise(source), make: () => practise(demo()) });
  keeping.follow(host);
  host.current().start();
  onTestFinished(() => host.stop());
  return host;
}

const someRepetitions = (host: PracticeHost) =>
  vi.waitFor(() => expect(host.current().view().ledger.rehearsals).toBeGreaterThan(2), PATIENCE);

async function reopened(root: string): Promise<SessionStore> {
  const store = await openStore(root);
  onTestFinished(() => store.close());
  return store;
}

describe('A live practice', () => {
  it('is a whole session when the service ends, with the very result that was seen', async () => {
    const root = scratch();
    const keeping = await keep({ root });
    const host = begin(keeping);
    await someRepetitions(host);
    await host.stop();
    await keeping.close();
    const { sessionId } = host.current().view().keeping!;
    const store = await reopened(root);
    const [session, ...others] = await store.list();
    expect(others).toEqual([]);
    expect(session).toMatchObject({ id: sessionId, state: 'complete', simulated: true });
    expect(session!.rehearsals).toBe(host.current().view().ledger.rehearsals);
    const recorded = await openSession(store.folderOf(session!.id));
    onTestFinished(() => recorded.close());
    expect(recorded.header).toMatchObject({ simulated: true, hand: 'right' });
    const again = await analyseSession(recorded, DEFAULT_PLAN);
    const kept = (await store.get(session!.id))!;
    expect(again.repetitions.map((r) => [r.kind, r.topS.toFixed(3)])).toEqual(
      kept.repetitions.map((r) => [r.kind, r.topS.toFixed(3)]),
    );
  });

  it('is closed when the person ends it, and keeps what was said of it', async () => {
    const keeping = await keep();
    onTestFinished(() => keeping.close());
    const saved: string[] = [];
    keeping.sessions.onSaved?.((id) => saved.push(id));
    const host = begin(keeping);
    await someRepetitions(host);
    const practice = host.current();
    expect(host.obey({ type: 'finish' })).toBeNull();
    await vi.waitFor(() => expect(saved).toHaveLength(1), PATIENCE);
    const command = { type: 'close', pain: 1, signs: ['numb'], note: 'windy' } as const;
    expect(host.obey(command)).toBeNull();
    keeping.said({ practice, command });
    const store = keeping.sessions.store!;
    await vi.waitFor(
      async () =>
        expect(await store.list()).toMatchObject([
          { state: 'complete', painAfter: 1, note: 'windy' },
        ]),
      PATIENCE,
    );
    const id = practice.view().keeping!.sessionId!;
    // once it is whole, and again with what was told later
    await vi.waitFor(() => expect(saved).toEqual([id, id]), PATIENCE);
    const kept = (await store.get(id))!;
    expect(kept.warnings.at(-1)).toMatchObject({ id: 'pain-high' });
    expect(practice.view().summary!.summary.next.code).toBe('pain');
    const recorded = await openSession(store.folderOf(id));
    onTestFinished(() => recorded.close());
    expect(recorded.events.at(-1)).toMatchObject({ type: 'pain', value: 1, signs: ['numb'] });
    const again = await analyseSession(recorded, DEFAULT_PLAN);
    expect(again.warnings.map((w) => [w.id, w.atS.toFixed(3)])).toEqual(
      kept.warnings.map((w) => [w.id, w.atS.toFixed(3)]),
    );
  });

  it('is not written where it is a recording that is played', async () => {
    const keeping = await keep();
    onTestFinished(() => keeping.close());
    const played = Object.assign(new HandSource(), { kind: 'replay' }) as unknown as HandSource;
    const host = begin(keeping, played);
    played.packets(1);
    await host.stop();
    expect(await keeping.sessions.store!.list()).toEqual([]);
    expect(host.current().view().keeping).toBeNull();
  });
});

describe('A demonstration without end', () => {
  it('begins anew in time, and only the last few are kept', async () => {
    const root = scratch();
    const keeping = await keep({ root, mostDemoS: 75 });
    const host = begin(keeping);
    const store = keeping.sessions.store!;
    const imported = await store.importSession(
      fileURLToPath(new URL('../../recordings/left-mixed.zip', import.meta.url)),
    );
    const seen = new Set<string>();
    await vi.waitFor(() => {
      seen.add(host.current().view().keeping?.sessionId ?? '');
      expect(seen.size).toBeGreaterThan(7);
    }, PATIENCE);
    await host.stop();
    await keeping.close();
    const kept = await (await reopened(root)).list();
    expect(kept.filter((s) => s.id !== imported).length).toBeLessThanOrEqual(5);
    expect(kept.map((s) => s.id)).toContain(imported);
    for (const session of kept) expect(session.state).toBe('complete');
  });
});

describe('Practice goes on, and the person is told', () => {
  it('where another process has the folder', async () => {
    const root = scratch();
    const other = await openStore(root);
    onTestFinished(() => other.close());
    const said: string[] = [];
    const keeping = await keep({ root, say: (sentence) => said.push(sentence) });
    const host = begin(keeping);
    await someRepetitions(host);
    expect(host.current().view().keeping).toEqual({
      sessionId: null,
      problem:
        'Your practices are not being saved: the data folder is in use by another running Stillcatch.',
    });
    expect(keeping.sessions.store).toBeNull();
    expect(said).toHaveLength(1);
    await keeping.close();
  });

  it('where the folder cannot be made', async () => {
    const file = join(scratch(), 'file');
    writeFileSync(file, '');
    const keeping = await keep({ root: join(file, 'data') });
    expect(keeping.sessions.problem).toMatch(/not being saved: the data folder .* cannot be made/);
    await keeping.close();
  });

  it('where the disk becomes full, and all is saved once there is room', async ({ skip }) => {
    const root = smallDisk('size=1500k') ?? skip('mounting a small disk needs root');
    const keeping = await keep({ root });
    const host = begin(keeping);
    const problem = () => host.current().view().keeping?.problem ?? '';
    await vi.waitFor(() => expect(problem()).toContain('the disk is full'), PATIENCE);
    await someRepetitions(host);
    execFileSync('mount', ['-o', 'remount,size=200m', root]);
    await vi.waitFor(() => expect(problem()).toBe(''), PATIENCE);
    await host.stop();
    await keeping.close();
    const store = await openStore(root);
    const [session] = await store.list();
    expect(session).toMatchObject({ state: 'complete' });
    const kept = (await store.get(session!.id))!;
    const recorded = await openSession(store.folderOf(session!.id));
    const again = await analyseSession(recorded, DEFAULT_PLAN);
    await recorded.close();
    await store.close();
    expect(kept.rehearsals).toBe(host.current().view().ledger.rehearsals);
    expect(again.repetitions).toHaveLength(kept.repetitions.length);
  });

  it('where the disk refuses when it begins', async () => {
    const root = scratch();
    const keeping = await keep({ root });
    rmSync(join(root, 'sessions'), { recursive: true });
    writeFileSync(join(root, 'sessions'), '');
    const host = begin(keeping);
    await someRepetitions(host);
    expect(host.current().view().keeping!.problem).toMatch(/^This practice is not being saved: /);
    await host.stop();
    await keeping.close();
  });
});

const listOf = async ({ url }: { readonly url: string }) => {
  const reply = await fetch(`${url}api/sessions`);
  return ((await reply.json()) as { sessions: Record<string, unknown>[] }).sessions;
};

/** Seconds of the sensor of which least has been written; none before the events that stand for them. */
function secondsOnDisk(root: string): number {
  const names = readdirSync(join(root, 'sessions'), { recursive: true, encoding: 'utf8' });
  const linesOf = (end: string): string[][] =>
    names
      .filter((name) => name.endsWith(end))
      .map((name) => readFileSync(join(root, 'sessions', name), 'utf8').split('\n'));
  const isCalibrated = linesOf('_events.tsv').flat().join().includes('address-reference');
  const lengths = linesOf('_motion.tsv').map((lines) => lines.length / 100);
  return isCalibrated && lengths.length > 1 ? Math.min(...lengths) : 0;
}

describe('The service', () => {
  it('that is killed finds its session as interrupted, with its repetitions', async () => {
    const root = scratch();
    const killed = await realService(root, 60);
    await vi.waitFor(async () => expect(await listOf(killed)).toHaveLength(1), PATIENCE);
    expect((await listOf(killed))[0]!['state']).toBe('recording');
    await vi.waitFor(() => expect(secondsOnDisk(root)).toBeGreaterThan(150), PATIENCE);
    await killed.end('SIGKILL');
    const next = await realService(root, 60, {}, false);
    await vi.waitFor(async () => {
      const old = (await listOf(next)).find((s) => s['state'] === 'interrupted');
      expect(old).toMatchObject({ analysed: true, problem: null, simulated: true });
      expect(old!['rehearsals']).toBeGreaterThan(2);
    }, PATIENCE);
    await next.end('SIGTERM');
    const states = (await (await reopened(root)).list()).map((s) => s.state);
    expect(states).not.toContain('running');
  });
});
