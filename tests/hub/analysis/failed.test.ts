import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { VERSION } from '../../../src/sessions/version.ts';
import type { FailedAnalysis } from '../../../src/streaming/hubContract/people.ts';
import type { HubSession } from '../../../src/streaming/hubContract/review.ts';
import { keptSession } from '../keptSession.ts';
import { type TestHub, testHub } from '../testHub.ts';

let hub: TestHub;
beforeEach(async () => {
  hub = await testHub();
  const { db } = hub.context;
  const problem = 'The analysis failed 3 times. No memory.';
  for (const id of ['s1', 's2'])
    await db
      .insertInto('session')
      .values({
        ...keptSession(id, 'sam', 1),
        analysed: 0,
        ...(id === 's1' && { problem }),
      })
      .execute();
  const given = { problem: 'No memory.', failedMs: 9, deadIn: VERSION };
  await db
    .insertInto('job')
    .values({ sessionId: 's1', queuedMs: 5, tries: 3, ...given })
    .execute();
});
afterEach(() => hub.close());

const failed = async () =>
  (await hub.ask('olga', { url: '/api/club/failed-analyses' })).json<FailedAnalysis[]>();
const session = async (id: string) =>
  (await hub.ask('carl', { url: `/api/sessions/${id}` })).json<HubSession>();

describe('an analysis that was given up', () => {
  it('is listed for the owner with its reason, and not whose practice it is', async () => {
    const listed = await failed();
    expect(listed).toEqual([
      { id: 's1', coach: 'Carl', receivedMs: 1, failedMs: 9, tries: 3, problem: 'No memory.' },
    ]);
    expect(JSON.stringify(listed)).not.toContain('Sam');
  });

  it('says so on its page, which waits for nothing', async () => {
    expect(await session('s1')).toMatchObject({
      analysing: false,
      summary: { problem: 'The analysis failed 3 times. No memory.' },
    });
  });

  it.each([
    ['olga', '/api/club/failed-analyses/s1'],
    ['carl', '/api/sessions/s1/analysis'],
  ])('is started again by %s', async (who, url) => {
    expect((await hub.ask(who, { url, method: 'POST' })).statusCode).toBe(204);
    expect(await failed()).toEqual([]);
    // The recording is not there at all: what it comes to is not of interest, only that it was tried.
    const { summary } = await session('s1');
    expect(summary.problem).not.toBe('The analysis failed 3 times. No memory.');
  });

  it('is no way to analyse over and over what has not failed', async () => {
    const answer = await hub.ask('carl', { url: '/api/sessions/s2/analysis', method: 'POST' });
    expect(answer.statusCode).toBe(409);
    expect(answer.json()).toMatchObject({ error: { message: 'This analysis has not failed.' } });
  });
});
