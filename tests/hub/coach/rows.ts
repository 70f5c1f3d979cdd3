import { DEFAULT_PLAN } from '../../../src/coaching/plan.ts';
import type { SessionTable } from '../../../src/hub/db/tables.ts';
import type { TestHub } from '../testHub.ts';

/** A row as though a session had come and been analysed; its recording is not there. */
export const sessionRow = (
  own: Pick<SessionTable, 'id' | 'studentId' | 'startedMs'> & Partial<SessionTable>,
): SessionTable => ({
  clientId: own.id,
  sha256: own.id,
  content: own.id,
  bytes: 1,
  receivedMs: own.startedMs,
  name: 'Practice',
  hand: 'right',
  simulated: 0,
  durationS: 600,
  analysed: 1,
  version: 'x',
  problem: null,
  rehearsals: 0,
  scored: 0,
  passed: 0,
  balls: 0,
  practiceSwings: 0,
  ballsInMix: 0,
  ledger: '',
  warnings: 0,
  painBefore: null,
  painAfter: null,
  note: '',
  noteEditedMs: null,
  plan: JSON.stringify(DEFAULT_PLAN),
  planNumber: null,
  spreads: '{"rehearsals":{},"balls":{}}',
  carryOver: '{"addedFlexion":null,"keptRotation":null}',
  differences: '[]',
  reviewedMs: null,
  reviewedBy: null,
  reviewedIn: null,
  ...own,
});

export async function addSession(
  hub: TestHub,
  own: Parameters<typeof sessionRow>[0],
): Promise<string> {
  await hub.context.db.insertInto('session').values(sessionRow(own)).execute();
  return own.id;
}

export async function addPlan(
  hub: TestHub,
  studentId: string,
  number: number,
  plan: object = DEFAULT_PLAN,
  validFromMs = 0,
): Promise<void> {
  await hub.context.db
    .insertInto('plan')
    .values({
      id: `${studentId}plan${number}`,
      studentId,
      number,
      plan: JSON.stringify(plan),
      validFromMs,
      createdMs: 0,
      byId: 'carl',
      reachedMs: null,
    })
    .execute();
}

export const DAY_MS = 86_400_000;
