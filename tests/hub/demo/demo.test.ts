import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { type DriftFacts, drifts } from '../../../src/coaching/drift.ts';
import { fillDemoClub, plannedOf } from '../../../src/hub/demo/fill.ts';
import { simulateDemo } from '../../../src/hub/demo/simulate.ts';
import { DEMO_STORIES } from '../../../src/hub/demo/stories.ts';
import { openHubData } from '../../../src/hub/db/open.ts';
import { buildHub } from '../../../src/hub/app.ts';
import type { HubContext } from '../../../src/hub/context.ts';
import { parseScript } from '../../../src/sensors/sources/synthetic/index.ts';
import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { testHub } from '../testHub.ts';

describe('the stories of the demo club', () => {
  it('can all be played, say demo in every name, and are short sessions', () => {
    for (const { name, sessions } of DEMO_STORIES) {
      expect(name).toMatch(/\(demo\)$/);
      for (const { script } of sessions) expect(parseScript(script).length).toBeLessThanOrEqual(12);
    }
    expect(DEMO_STORIES).toHaveLength(8);
    expect(new Set(DEMO_STORIES.map(({ hand }) => hand)).size).toBe(2);
  });
});

describe('thirteen months', () => {
  it('hold at least four sessions in the last four weeks and in the same weeks a year ago', () => {
    const within = (login: string, from: number, to: number): number => {
      const { sessions } = DEMO_STORIES.find((story) => story.login === login)!;
      return sessions.filter(({ daysAgo }) => daysAgo >= from && daysAgo < to).length;
    };
    for (const login of ['mara', 'oren', 'edvin']) {
      expect(within(login, 1, 27), login).toBeGreaterThanOrEqual(4);
      expect(within(login, 365, 391), login).toBeGreaterThanOrEqual(4);
      expect(within(login, 391, 400), login).toBeGreaterThanOrEqual(1);
    }
  });
});

describe('the student who drifts', () => {
  const story = DEMO_STORIES.find(({ login }) => login === 'oren')!;
  const DAY = 86_400_000;

  it('was inside the target and is outside it in the last sessions, in simulated and analysed movement', async () => {
    const root = await mkdtemp(join(tmpdir(), 'stillcatch-drift-'));
    const data = await openHubData(root);
    try {
      const nowMs = Date.now();
      const context = { ...data, settings: { publicUrl: 'x' }, now: () => nowMs, say: () => {} };
      const orders = plannedOf(context, story, 1).slice(-6).reverse();
      expect(nowMs - orders[0]!.startedMs).toBeLessThan(5 * DAY);
      const recent: DriftFacts[] = [];
      for (const { order } of orders) {
        const { answer } = await simulateDemo(order);
        if (!answer.ok) throw new Error(answer.problem);
        recent.push(JSON.parse(answer.columns.spreads) as DriftFacts);
      }
      const found = drifts(story.plans.at(-1)!.plan, recent);
      expect(found.map(({ measure }) => measure)).toEqual(['keptRotationDeg']);
    } finally {
      await data.close();
      await rm(root, { recursive: true, force: true });
    }
  });
});

describe('filling', () => {
  let root: string;
  let data: Awaited<ReturnType<typeof openHubData>>;
  beforeEach(async () => {
    root = await mkdtemp(join(tmpdir(), 'stillcatch-demo-'));
    data = await openHubData(root);
  });
  afterEach(async () => {
    await data.close();
    await rm(root, { recursive: true, force: true });
  });
  const contextOf = (): HubContext => ({
    db: data.db,
    places: data.places,
    settings: { publicUrl: 'http://localhost:80' },
    now: Date.now,
    say: () => undefined,
  });

  it('has people, plans and sign-ins at once and simulated, analysed sessions after', async () => {
    const context = contextOf();
    let heard: (done: number) => void = () => undefined;
    const firstDone = new Promise<number>((resolve) => (heard = resolve));
    const club = await fillDemoClub(context, (done) => heard(done));
    try {
      expect(club.signIns).toHaveLength(10);
      const { app } = await buildHub(context);
      const { login, password } = club.signIns[0]!;
      const answer = await app.inject({
        method: 'POST',
        url: '/api/login',
        payload: { login, password },
      });
      expect(answer.json()).toMatchObject({ club: { demo: true }, role: 'owner' });
      await app.close();
      await firstDone;
    } finally {
      await club.stop();
      await club.filled;
    }
    const [row] = await context.db.selectFrom('session').selectAll().execute();
    expect(row).toMatchObject({ simulated: 1, analysed: 1, name: 'Simulated practice (demo)' });
    expect(row!.rehearsals).toBeGreaterThan(0);
  });
});

it('a real club is never filled with invented people', async () => {
  const hub = await testHub();
  await expect(fillDemoClub(hub.context, () => undefined)).rejects.toThrow(/real club/);
  await hub.close();
});
