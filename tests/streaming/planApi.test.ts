import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import Fastify from 'fastify';
import { describe, expect, it, onTestFinished } from 'vitest';
import { NOTHING_DONE, type PracticeCounts } from '../../src/coaching/notCounted.ts';
import { DEFAULT_PLAN, type Plan } from '../../src/coaching/plan.ts';
import { planFile, planService } from '../../src/main/planFile.ts';
import { askedPlan, registerPlanApi } from '../../src/streaming/planApi.ts';
import type { PlanView } from '../../src/streaming/planContract.ts';
import { scratch } from '../sessions/makeSession.ts';

const WEEK: PracticeCounts = { ...NOTHING_DONE, sessions: 1, repetitions: 12 };
const THREE: Plan = { ...DEFAULT_PLAN, ratio: { rehearsals: 3, balls: 1 } };

function serve(coach: Plan | null = null) {
  const path = join(scratch(), 'plans.json');
  const open = () =>
    planService({ file: planFile(path, () => 5), coach: () => coach, week: async () => WEEK });
  const service = open();
  const app = Fastify();
  registerPlanApi(app, service);
  onTestFinished(() => app.close());
  const put = (payload: unknown, headers = {}) =>
    app.inject({
      method: 'PUT',
      url: '/api/plan',
      headers: { 'content-type': 'application/json', ...headers },
      payload: JSON.stringify(payload),
    });
  const get = async () => (await app.inject({ url: '/api/plan' })).json<PlanView>();
  return { path, open, service, put, get };
}

describe('the plan of the service', () => {
  it('is the standard one at first', async () => {
    const { get, service } = serve();
    expect(await get()).toEqual({
      plan: DEFAULT_PLAN,
      author: 'default',
      versions: [],
      week: WEEK,
    });
    expect(askedPlan(service)).toBeNull();
  });

  it('is changed, told of, kept with every version, and is there after a new start', async () => {
    const { put, get, open, service } = serve();
    expect((await put(THREE)).statusCode).toBe(200);
    await put(DEFAULT_PLAN);
    const view = await get();
    expect(view.author).toBe('student');
    expect(view.versions.map((v) => [v.number, v.madeMs, v.changes])).toEqual([
      [2, 5, ['Mix: 2 to 1, was 3 to 1.']],
      [1, 5, ['Mix: 3 to 1, was 2 to 1.']],
    ]);
    expect(open().own()).toEqual(service.own());
    expect(askedPlan(service)).toEqual(DEFAULT_PLAN);
  });

  it.each([
    [{ ...DEFAULT_PLAN, ratio: { rehearsals: 0, balls: 1 } }, 400, /ratio\.rehearsals must be/],
    [null, 400, /plan must be an object/],
    [DEFAULT_PLAN, 409, /No changes to save/],
  ])('refuses %j in a sentence', async (body, status, words) => {
    const { put, service } = serve();
    const reply = await put(body);
    expect(reply.statusCode).toBe(status);
    expect(reply.json<{ error: { message: string } }>().error.message).toMatch(words);
    expect(service.own()).toEqual([]);
  });

  it('is not changed by the page of another site', async () => {
    const { put } = serve();
    expect((await put(THREE, { origin: 'http://evil.example' })).statusCode).toBe(403);
  });

  it('of a coach comes first and is not changed here', async () => {
    const { put, get, service } = serve(THREE);
    expect(await get()).toMatchObject({ author: 'coach', plan: THREE });
    expect((await put(DEFAULT_PLAN)).statusCode).toBe(409);
    expect(askedPlan(service)).toEqual(THREE);
  });

  it('is never overwritten where its file cannot be understood', () => {
    const { path, open } = serve();
    writeFileSync(path, '{"schema":1,"versions":[{"number":1,"madeMs":0,"plan":{"stage":"x"}}]}');
    expect(open).toThrow(/plans\.json is damaged .*stage must be one of/);
    expect(readFileSync(path, 'utf8')).toContain('"x"');
  });
});
