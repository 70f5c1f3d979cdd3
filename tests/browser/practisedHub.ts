import type { Page } from 'playwright-core';
import { DEFAULT_PLAN, TARGET_MEASURES } from '../../src/coaching/plan.ts';
import { newPasswordHash } from '../../src/hub/people/passwords.ts';
import { sessionRow } from '../hub/coach/rows.ts';
import type { RunningHub } from './hubHarness.ts';

const DAY_MS = 86_400_000;
const PASSWORD = 'five calm herons';
/** Two coaches; Sam is Carla's student and has practised twice a week for 13 months. */
export async function fillPractised({ context: { db } }: RunningHub): Promise<void> {
  await db.insertInto('club').values({ id: 1, name: 'Fernhill', demo: 0 }).execute();
  const passwordHash = await newPasswordHash(PASSWORD, 'carla');
  const person = { passwordHash, active: 1, createdMs: 0, hand: 'right' } as const;
  for (const [id, role, coachId] of [
    ['carla', 'owner', null],
    ['olga', 'coach', null],
    ['sam', 'student', 'carla'],
  ] as const)
    await db
      .insertInto('person')
      .values({
        ...person,
        id,
        login: id,
        role,
        coachId,
        name: id.replace(/^./, (c) => c.toUpperCase()),
      })
      .execute();
  for (const [number, daysAgo] of [
    [1, 400],
    [2, 40],
  ] as const)
    await db
      .insertInto('plan')
      .values({
        id: `plan${number}`,
        studentId: 'sam',
        number,
        plan: JSON.stringify({ ...DEFAULT_PLAN, name: `Plan ${number}` }),
        validFromMs: Date.now() - daysAgo * DAY_MS,
        createdMs: Date.now() - daysAgo * DAY_MS,
        byId: 'carla',
        reachedMs: null,
      })
      .execute();
  for (let day = 1; day < 395; day += 3) {
    const better = 1 - day / 395;
    const wave = Math.sin(day * 7);
    const spread = (value: number, half: number) => ({
      count: 12,
      low: value - half,
      median: value,
      high: value + half,
    });
    const values = (less: number) =>
      Object.fromEntries(
        TARGET_MEASURES.map((m) =>
          m === 'holdS'
            ? [m, spread(0.7 + 0.6 * better + 0.05 * wave - less / 10, 0.1)]
            : /Ms$/.test(m)
              ? [m, spread(60 + 90 * better + 9 * wave, 20)]
              : [m, spread(4 + 9 * better + 2 * wave - less, 3)],
        ),
      );
    const passed = Math.round(10 * better);
    await db
      .insertInto('session')
      .values(
        sessionRow({
          id: `s${day}`,
          studentId: 'sam',
          simulated: 0,
          startedMs: Date.now() - day * DAY_MS,
          planNumber: day > 40 ? 1 : 2,
          rehearsals: 12,
          balls: 6,
          ballsInMix: 5,
          scored: 12,
          passed,
          reviewedMs: 1,
          spreads: JSON.stringify({
            rehearsals: values(0),
            balls: values(3),
            checks: { holdS: { scored: 12, passed: Math.min(12, passed + (day % 2)) } },
          }),
          carryOver: JSON.stringify({
            addedFlexion: 0.4 + 0.4 * better + 0.05 * wave,
            keptRotation: null,
          }),
        }),
      )
      .execute();
  }
}

/** As Carla. */
export async function signIn(page: Page): Promise<void> {
  await page.getByLabel('Sign-in name').fill('carla');
  await page.getByLabel('Password').fill(PASSWORD);
  await page.keyboard.press('Enter');
}
