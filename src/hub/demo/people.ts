import { newPasswordHash } from '../people/passwords.ts';
import type { HubContext } from '../context.ts';
import { hashOf, newToken } from '../../streaming/secrets.ts';
import { newCode } from '../access/secrets.ts';
import { DEFAULT_PLAN } from '../../coaching/plan.ts';
import { DEMO_COACHES, DEMO_STORIES, DEMO_TEXTS, type DemoStory } from './stories.ts';

const DAY_MS = 86_400_000;

export interface DemoSignIn {
  readonly login: string;
  readonly name: string;
  readonly password: string;
}

/** Ids of the demo club tell what they are. */
export const demoId = (login: string): string => `demo-${login}`;
export const coachIdOf = ({ coach }: DemoStory): string => demoId(DEMO_COACHES[coach].login);

/**
 * Makes the club, its people, plans and lessons, where they are not there yet. The password is another at every start.
 * @throws Error in words where the folder holds a club that is not the demo's
 */
export async function makeDemoPeople(context: HubContext): Promise<readonly DemoSignIn[]> {
  const { db, now } = context;
  const there = await db.selectFrom('club').select('demo').executeTakeFirst();
  if (there !== undefined && there.demo !== 1)
    throw new Error('This folder holds a real club: the demo needs a folder of its own.');
  const password = newCode();
  const passwordHash = await newPasswordHash(password, 'demo');
  if (there === undefined) {
    const name = 'Demo club (invented people, simulated sessions)';
    await db.insertInto('club').values({ id: 1, name, demo: 1 }).execute();
    for (const { login, name: who, role } of DEMO_COACHES)
      await addPerson(context, { login, name: who, role, coachId: null, hand: 'right' }, 0);
    for (const story of DEMO_STORIES) await addStudent(context, story);
    await addTexts(context);
  }
  await db.updateTable('person').set({ passwordHash }).where('id', 'like', 'demo-%').execute();
  await db.deleteFrom('signin').where('lastSeenMs', '<', now()).execute();
  return [...DEMO_COACHES, ...DEMO_STORIES].map(({ login, name }) => ({ login, name, password }));
}

/** What the first coach writes often, and a plan to start from. */
async function addTexts({ db }: HubContext): Promise<void> {
  const coachId = demoId(DEMO_COACHES[0].login);
  for (const [i, [title, text]] of DEMO_TEXTS.entries())
    await db
      .insertInto('block')
      .values({ id: `${coachId}-text-${i + 1}`, coachId, title, text })
      .execute();
  const plan = { ...DEFAULT_PLAN, name: 'First weeks', stage: 'movement' as const };
  await db
    .insertInto('template')
    .values({
      id: `${coachId}-template`,
      coachId,
      name: plan.name,
      plan: JSON.stringify(plan),
    })
    .execute();
}

async function addPerson(
  { db }: HubContext,
  person: {
    login: string;
    name: string;
    role: 'owner' | 'coach' | 'student';
    coachId: string | null;
    hand: 'left' | 'right';
  },
  createdMs: number,
): Promise<void> {
  const id = demoId(person.login);
  await db
    .insertInto('person')
    .values({ ...person, id, passwordHash: null, active: 1, createdMs })
    .execute();
}

async function addStudent(context: HubContext, story: DemoStory): Promise<void> {
  const { db, now } = context;
  const { login, name, hand } = story;
  const ago = (days: number): number => Math.round(now() - days * DAY_MS);
  const coachId = coachIdOf(story);
  const student = { login, name, role: 'student', coachId, hand } as const;
  await addPerson(context, student, ago(story.joinedDaysAgo));
  const studentId = demoId(login);
  for (const [i, { daysAgo, plan }] of story.plans.entries())
    await db
      .insertInto('plan')
      .values({
        id: `${studentId}-plan-${i + 1}`,
        studentId,
        number: i + 1,
        plan: JSON.stringify(plan),
        validFromMs: ago(daysAgo),
        createdMs: ago(daysAgo),
        byId: coachId,
        reachedMs: story.machine === undefined ? null : ago(daysAgo - 0.5),
      })
      .execute();
  if (story.machine !== undefined)
    await db
      .insertInto('machine')
      .values({
        id: `${studentId}-machine`,
        studentId,
        name: story.machine.name,
        // Of a token that nobody has.
        tokenHash: hashOf(newToken()),
        pairedMs: ago(story.joinedDaysAgo),
        lastSeenMs: ago(story.machine.seenHoursAgo / 24),
        revokedMs: null,
      })
      .execute();
  for (const [i, { daysAgo, text }] of story.lessons.entries())
    await db
      .insertInto('lesson')
      .values({ id: `${studentId}-lesson-${i + 1}`, studentId, atMs: ago(daysAgo), text })
      .execute();
}
