import { cookieName } from '../../src/hub/access/cookies.ts';
import { signIn } from '../../src/hub/access/signin.ts';
import { plannedOf } from '../../src/hub/demo/fill.ts';
import { simulateDemo } from '../../src/hub/demo/simulate.ts';
import { DEMO_STORIES } from '../../src/hub/demo/stories.ts';
import { sessionRow } from '../hub/coach/rows.ts';
import type { RunningHub } from './hubHarness.ts';

const DAY_MS = 86_400_000;

/** A hub with a coach and invented students, as rows: their recordings are not there. */
export interface HubRows {
  addStudent(id: string, name: string): Promise<void>;
  addSession(own: Parameters<typeof sessionRow>[0]): Promise<void>;
  addWarning(sessionId: string, warningId: string): Promise<void>;
  daysAgo(days: number): number;
  /** Cookie of somebody who is signed in. */
  cookieOf(who: string): Promise<{ name: string; value: string; url: string }>;
}

export async function hubRows({ context, url }: RunningHub): Promise<HubRows> {
  const { db, now } = context;
  await db.insertInto('club').values({ id: 1, name: 'Fernhill Practice Club', demo: 0 }).execute();
  const addPerson = async (id: string, name: string, coachId: string | null): Promise<void> => {
    await db
      .insertInto('person')
      .values({
        id,
        name,
        coachId,
        role: coachId === null ? 'owner' : 'student',
        login: id,
        passwordHash: null,
        active: 1,
        createdMs: 0,
        hand: 'right',
      })
      .execute();
  };
  await addPerson('carla', 'Carla Wend', null);
  return {
    addStudent: (id, name) => addPerson(id, name, 'carla'),
    async addSession(own) {
      await db.insertInto('session').values(sessionRow(own)).execute();
    },
    async addWarning(sessionId, warningId) {
      await db
        .insertInto('warning')
        .values({ sessionId, position: 0, warningId, atS: 1, text: 'x' })
        .execute();
    },
    daysAgo: (days) => now() - days * DAY_MS,
    cookieOf: async (who) => ({
      name: cookieName(false),
      value: await signIn(db, who, now()),
      url,
    }),
  };
}

/** The newest practice of a student of the demo club, simulated and analysed, as it stands there. */
export async function demoPractice(
  { context }: RunningHub,
  rows: HubRows,
  login: string,
): Promise<string> {
  const at = DEMO_STORIES.findIndex((story) => story.login === login);
  const story = DEMO_STORIES[at]!;
  const { order, startedMs } = plannedOf(context, story, at).at(-1)!;
  const { answer } = await simulateDemo(order);
  if (!answer.ok) throw new Error(answer.problem);
  const studentId = `demo-${login}`;
  await rows.addStudent(studentId, story.name);
  const { sessionId: id, notes } = order;
  await rows.addSession({ ...answer.columns, ...notes, id, studentId, startedMs });
  for (const [position, warning] of answer.warnings.entries())
    await context.db
      .insertInto('warning')
      .values({ sessionId: id, position, ...warning })
      .execute();
  return id;
}

/** Of 200 students, every eighth needs a coach: pain, a warning or a question. */
export async function twoHundred(rows: HubRows): Promise<void> {
  const first = ['Ada', 'Bruno', 'Celia', 'Doriano', 'Edda', 'Falk', 'Greta', 'Hanno', 'Ilka'];
  const last = ['Abbotsholme', 'Brandt', 'Corvey', 'Dunmore', 'Ellery', 'Fallow', 'Gander'];
  for (let i = 0; i < 200; i++) {
    const studentId = `s${i}`;
    await rows.addStudent(studentId, `${first[i % 9]} ${last[i % 7]} ${i}`);
    if (i % 8 === 7) continue;
    const kind = i % 8 === 0 ? (i / 8) % 3 : 3;
    for (let k = 0; k < 3; k++) {
      const id = `${studentId}x${k}`;
      const newest = k === 0;
      await rows.addSession({
        id,
        studentId,
        startedMs: rows.daysAgo(k * 2 + (i % 5) + 0.3),
        rehearsals: 40,
        balls: 10,
        ballsInMix: i % 8 === 3 ? 4 : 10,
        scored: 38,
        passed: 30,
        painBefore: 0,
        painAfter: newest && kind === 0 ? 6 : 1,
        warnings: newest && kind === 1 ? 1 : 0,
        note:
          newest && kind === 2
            ? 'The hold feels long on the last ones. Should I shorten the session, or take more breaks between the rehearsals?'
            : '',
        reviewedMs: newest && i % 8 !== 5 ? null : rows.daysAgo(0.1),
      });
      if (newest && kind === 1) await rows.addWarning(id, 'own-range');
    }
  }
}
