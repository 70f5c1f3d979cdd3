import type {
  LogAbout,
  LogEntry,
  LogName,
  LogPerson,
  LogSession,
} from '../../streaming/hubContract/log.ts';
import type { Role } from '../../streaming/hubContract/people.ts';
import type { Db } from '../db/open.ts';
import type { LogTable } from '../db/tables.ts';
import type { Selectable } from 'kysely';

const PAGE = 100;
/** Which numbers of an entry stand for somebody or something. */
const THINGS = ['person', 'coach', 'session', 'machine', 'invite'] as const;

type Known = ReadonlyMap<number, LogPerson & LogSession>;

/** What a page of numbers stands for today. */
async function lookUp(db: Db, numbers: readonly number[]): Promise<Known> {
  const rows = await db
    .selectFrom('logged')
    .leftJoin('person', (on) =>
      on.onRef('person.id', '=', 'logged.ref').on('logged.kind', '=', 'person'),
    )
    .leftJoin('machine', (on) =>
      on.onRef('machine.id', '=', 'logged.ref').on('logged.kind', '=', 'machine'),
    )
    .leftJoin('invite', (on) =>
      on.onRef('invite.id', '=', 'logged.ref').on('logged.kind', '=', 'invite'),
    )
    .leftJoin('session', (on) =>
      on.onRef('session.id', '=', 'logged.ref').on('logged.kind', '=', 'session'),
    )
    .leftJoin('person as student', 'student.id', 'session.studentId')
    .select(['logged.number', 'logged.role', 'student.name as student'])
    .select((e) => e.fn.coalesce('person.name', 'machine.name', 'invite.name').as('name'))
    .where('logged.number', 'in', numbers)
    .execute();
  return new Map(rows.map((row) => [row.number, { ...row, role: row.role as Role | null }]));
}

interface Kept {
  readonly person?: number;
  readonly coach?: number;
  readonly session?: number;
  readonly machine?: number;
  readonly invite?: number;
}

const person = (known: Known, number: number): LogPerson => ({
  number,
  name: known.get(number)?.name ?? null,
  role: known.get(number)?.role ?? null,
});
const named = (known: Known, number: number): LogName => ({
  number,
  name: known.get(number)?.name ?? null,
});
const session = (known: Known, number: number): LogSession => ({
  number,
  student: known.get(number)?.student ?? null,
});

const aboutOf = (kept: Kept, known: Known): LogAbout =>
  ({
    ...(kept as object),
    ...(kept.person !== undefined && { person: person(known, kept.person) }),
    ...(kept.coach !== undefined && { coach: person(known, kept.coach) }),
    ...(kept.session !== undefined && { session: session(known, kept.session) }),
    ...(kept.machine !== undefined && { machine: named(known, kept.machine) }),
    ...(kept.invite !== undefined && { invite: named(known, kept.invite) }),
  }) as LogAbout;

/** A page of the log before an entry, newest first, with the names of today. */
export async function pageOfLog(db: Db, before: number | undefined): Promise<readonly LogEntry[]> {
  const rows: readonly (Selectable<LogTable> & { address: string | null })[] = await db
    .selectFrom('log')
    .leftJoin('logAddress', 'logAddress.logId', 'log.id')
    .selectAll('log')
    .select('logAddress.address')
    .$if(before !== undefined, (q) => q.where('log.id', '<', before ?? 0))
    .orderBy('log.id', 'desc')
    .limit(PAGE)
    .execute();
  const abouts = rows.map(({ about }) => JSON.parse(about) as Kept);
  const numbers = [
    ...rows.flatMap(({ byNumber }) => byNumber ?? []),
    ...abouts.flatMap((about) => THINGS.flatMap((thing) => about[thing] ?? [])),
  ];
  const known = await lookUp(db, [...new Set(numbers)]);
  return rows.map(({ id, atMs, byNumber, act, address }, i) => ({
    id,
    atMs,
    by: byNumber === null ? null : person(known, byNumber),
    act: act as LogEntry['act'],
    about: aboutOf(abouts[i] ?? {}, known),
    address: address ?? '',
  }));
}
