import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import type { HubSession } from '../../../src/streaming/hubContract/review.ts';
import type {
  CalmReview,
  PainClosing,
  StudentList,
  StudentRow,
  StudentView,
} from '../../../src/streaming/hubContract/students.ts';
import { type TestHub, testHub } from '../testHub.ts';
import { DAY_MS, addPlan, addSession } from './rows.ts';

let hub: TestHub;
beforeEach(async () => {
  hub = await testHub();
});
afterEach(() => hub.close());

const sent = (who: string, method: 'POST' | 'PUT' | 'DELETE', url: string, payload?: object) =>
  hub.ask(who, { method, url: `/api/${url}`, ...(payload && { payload }) });
const sam = async (): Promise<StudentRow> => {
  const { students } = (await hub.ask('carl', { url: '/api/students' })).json<StudentList>();
  return students.find(({ id }) => id === 'sam')!;
};
const codes = async (): Promise<string[]> => (await sam()).needs.map(({ code }) => code);
const review = (id: string) => sent('carl', 'PUT', `sessions/${id}/reviewed`, { reviewed: true });
const acts = async (): Promise<string[]> =>
  (await hub.context.db.selectFrom('log').select('act').orderBy('id').execute()).map((a) => a.act);

/** A practice of sam's so many days ago. */
const practice = (
  id: string,
  daysAgo: number,
  own: Partial<Parameters<typeof addSession>[1]> = {},
) =>
  addSession(hub, {
    id,
    studentId: 'sam',
    startedMs: hub.clock.ms - daysAgo * DAY_MS,
    rehearsals: 60,
    ...own,
  });
const warn = (sessionId: string, warningId: string) =>
  hub.context.db
    .insertInto('warning')
    .values({ sessionId, position: 0, warningId, atS: 1, text: 'x' })
    .execute();

describe('pain', () => {
  it('is named with its session and ends with a later one in which it was low', async () => {
    await practice('a', 4, { painBefore: 2, painAfter: 6 });
    await review('a');
    await practice('b', 3);
    expect((await sam()).needs[0]).toMatchObject({
      code: 'pain',
      sessionId: 'a',
      atMs: hub.clock.ms - 4 * DAY_MS,
      text: 'Rated pain 6 of 10.',
    });
    await practice('c', 2, { painAfter: 1, analysed: 0 });
    expect(await codes()).toContain('pain');
    await practice('d', 1, { painAfter: 1 });
    expect(await codes()).not.toContain('pain');
  });

  it('is closed by the coach with a reason, on record, and opened again', async () => {
    await practice('a', 4, { painAfter: 6 });
    const url = 'students/sam/pain-closings';
    const close = (payload: object, who = 'carl') => sent(who, 'POST', url, payload);
    expect((await close({ sessionId: 'a', reason: '  ' })).statusCode).toBe(400);
    expect((await close({ sessionId: 'a' })).statusCode).toBe(400);
    expect((await close({ sessionId: 'other', reason: 'x' })).statusCode).toBe(409);
    expect((await close({ sessionId: 'a', reason: 'x' }, 'olga')).statusCode).toBe(404);
    const session = async (who: string) =>
      (await hub.ask(who, { url: '/api/sessions/a' })).json<HubSession>().openPain;
    expect([await session('carl'), await session('sam')]).toEqual(['Rated pain 6 of 10.', null]);

    const reason = 'Saw a physiotherapist, who found nothing.';
    const made = await close({ sessionId: 'a', reason });
    expect(made.statusCode).toBe(201);
    expect(await codes()).not.toContain('pain');
    expect(await session('carl')).toBeNull();
    expect((await close({ sessionId: 'a', reason })).statusCode).toBe(409);
    const view = async () =>
      (await hub.ask('carl', { url: '/api/students/sam' })).json<StudentView>().painClosings;
    expect(await view()).toMatchObject([{ reason, by: 'Carl', reopenedMs: null, sessionId: 'a' }]);

    const { id } = made.json<PainClosing>();
    expect((await sent('olga', 'DELETE', `pain-closings/${id}`)).statusCode).toBe(404);
    expect((await sent('carl', 'DELETE', `pain-closings/${id}`)).statusCode).toBe(204);
    expect(await codes()).toContain('pain');
    expect(await view()).toMatchObject([{ reason, reopenedMs: hub.clock.ms }]);
    expect(await acts()).toEqual(['pain-close', 'pain-reopen']);
  });

  it('is open again with a later session, and with an earlier one that comes late', async () => {
    await practice('a', 4, { painAfter: 6 });
    await sent('carl', 'POST', 'students/sam/pain-closings', { sessionId: 'a', reason: 'Rests.' });
    await practice('late', 5, { painAfter: 7, receivedMs: hub.clock.ms + 1 });
    expect((await sam()).needs[0]).toMatchObject({ code: 'pain', sessionId: 'late' });
    await practice('b', 1, { painAfter: 4 });
    expect((await sam()).needs[0]).toMatchObject({ code: 'pain', sessionId: 'b' });
  });
});

describe('another warning', () => {
  it('fades with the next session that is reviewed under the plan of now and is without it', async () => {
    await addPlan(hub, 'sam', 1);
    await addPlan(hub, 'sam', 2);
    await practice('a', 6, { warnings: 1, planNumber: 1 });
    await warn('a', 'missed');
    expect((await sam()).needs[0]).toMatchObject({ code: 'warning', sessionId: 'a' });
    await review('a');
    expect(await codes()).toContain('seen-warning');
    await practice('old', 5, { planNumber: 1 });
    await review('old');
    expect(await codes()).toContain('seen-warning');
    await practice('again', 4, { warnings: 1, planNumber: 2 });
    await warn('again', 'missed');
    await review('again');
    expect((await sam()).needs.find((n) => n.code === 'seen-warning')?.sessionId).toBe('again');
    await practice('b', 3, { planNumber: 2 });
    expect(await codes()).toContain('seen-warning');
    await review('b');
    expect(await codes()).not.toContain('seen-warning');
  });
});

describe('a question', () => {
  it('in a note waits until the coach answers the note; the student gets the answer', async () => {
    await practice('a', 2, { note: 'Good. May I hit more balls?', clientId: 'first' });
    await practice('b', 1, { note: 'All fine today.' });
    expect((await sam()).needs[0]).toMatchObject({
      code: 'unanswered',
      sessionId: 'a',
      quote: 'Good. May I hit more balls?',
      answerTo: 'note',
    });
    const say = (payload: object) => sent('carl', 'POST', 'sessions/a/comments', payload);
    await say({ text: 'Lean is better here.', index: 2 });
    expect(await codes()).toContain('unanswered');
    const answered = await say({ text: 'Yes, three more.', onNote: true });
    expect(answered.json()).toMatchObject({ onNote: true, text: 'Yes, three more.' });
    expect(await codes()).not.toContain('unanswered');
    const inbox = await hub.ask('sam:machine', { url: '/api/machine/inbox' });
    expect(inbox.json()).toMatchObject({
      threads: [{ clientId: 'first', comments: [{ onNote: false }, { onNote: true }] }],
    });
  });

  it('in a comment is quoted with the comment that an answer goes to', async () => {
    await practice('a', 2, { note: 'Why?' });
    const made = await sent('sam', 'POST', 'sessions/a/comments', { text: 'Is this right?' });
    expect((await sam()).needs[0]).toMatchObject({
      quote: 'Is this right?',
      answerTo: made.json<{ id: string }>().id,
    });
  });

  it('in the note of a session that was reviewed long ago does not come back', async () => {
    await practice('a', 40, { note: 'Why?' });
    expect(await codes()).toContain('unanswered');
    await review('a');
    expect(await codes()).not.toContain('unanswered');
  });
});

describe('calm sessions', () => {
  it('are marked together: no warning, no pain, nothing open of the student; and taken back', async () => {
    await practice('calm', 3);
    await practice('calm2', 2, { painAfter: 1 });
    await practice('warned', 1, { warnings: 1 });
    await practice('waits', 0.5, { analysed: 0 });
    await practice('simulated', 0.2, { simulated: 1 });
    await addSession(hub, { id: 'hurt', studentId: 'sue', startedMs: 2, painAfter: 5 });
    await addSession(hub, { id: 'quiet', studentId: 'sue', startedMs: 1 });
    await addSession(hub, { id: 'others', studentId: 'tom', startedMs: 1 });
    expect((await sam()).calm).toBe(2);
    const reviewed = async () =>
      (
        await hub.context.db
          .selectFrom('session')
          .select('id')
          .where('reviewedMs', 'is not', null)
          .orderBy('id')
          .execute()
      ).map(({ id }) => id);
    const made = await sent('carl', 'POST', 'calm-reviews');
    const { id, sessions } = made.json<CalmReview>();
    expect([sessions, await reviewed()]).toEqual([2, ['calm', 'calm2']]);
    expect((await sent('olga', 'DELETE', `calm-reviews/${id}`)).statusCode).toBe(404);
    // One that the coach then marks by hand is no longer one of them.
    await sent('carl', 'PUT', 'sessions/calm/reviewed', { reviewed: true });
    expect((await sent('carl', 'DELETE', `calm-reviews/${id}`)).statusCode).toBe(204);
    expect(await reviewed()).toEqual(['calm']);
    expect((await sent('carl', 'DELETE', `calm-reviews/${id}`)).statusCode).toBe(404);
    expect(await acts()).toEqual(['review-calm', 'review-undo']);
  });

  it('can be taken back for an hour', async () => {
    await practice('calm', 3);
    const { id } = (await sent('carl', 'POST', 'calm-reviews')).json<CalmReview>();
    hub.clock.ms += 3_600_001;
    expect((await sent('carl', 'DELETE', `calm-reviews/${id}`)).statusCode).toBe(404);
  });
});
