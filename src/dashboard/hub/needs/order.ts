import { NEED_CODES, type NeedCode, needsCoach } from '../../../coaching/attention.ts';
import type { StudentRow } from '../../../streaming/hubContract/students.ts';

/** What the list is narrowed to. */
export interface Narrowing {
  readonly need: NeedCode | null;
  readonly name: string;
}

export const firstNeed = (student: StudentRow): NeedCode => student.needs[0]?.code ?? 'none';

const hasNeed = (student: StudentRow, need: NeedCode): boolean =>
  need === 'none' ? firstNeed(student) === 'none' : student.needs.some(({ code }) => code === need);

/** Lower case without accents: a name is found however it is typed. */
const plain = (text: string): string =>
  text
    .normalize('NFD')
    .replaceAll(/\p{Diacritic}/gu, '')
    .toLowerCase();

/** In the order that the hub gave. */
export function narrowed(
  students: readonly StudentRow[],
  { need, name }: Narrowing,
): readonly StudentRow[] {
  const words = plain(name).split(/\s+/).filter(Boolean);
  return students.filter(
    (student) =>
      (need === null || hasNeed(student, need)) &&
      words.every((word) => plain(student.name).includes(word)),
  );
}

export const GROUPS = ['coach', 'small', 'well'] as const;
export type Group = (typeof GROUPS)[number];

/** Who needs a person, who has small things only, who has nothing; each in the order that the hub gave. */
export function grouped(
  students: readonly StudentRow[],
): Readonly<Record<Group, readonly StudentRow[]>> {
  const groupOf = (s: StudentRow): Group =>
    needsCoach(s.needs) ? 'coach' : firstNeed(s) === 'none' ? 'well' : 'small';
  const of = (group: Group) => students.filter((s) => groupOf(s) === group);
  return { coach: of('coach'), small: of('small'), well: of('well') };
}

/** So many lines fit a laptop's screen: no group is folded then. */
const FIT = 20;

/** Groups that are open before anybody folds them: those who need a coach; all where that is few, or was asked for. */
export function openAtFirst(
  groups: Readonly<Record<Group, readonly StudentRow[]>>,
  isNarrowed: boolean,
): readonly Group[] {
  const all = GROUPS.reduce((sum, group) => sum + groups[group].length, 0);
  if (isNarrowed || all <= FIT) return GROUPS;
  return groups.coach.length > 0 ? ['coach'] : ['small'];
}

/** How many students have each need; needs that nobody has are left out. */
export function needCounts(students: readonly StudentRow[]): ReadonlyMap<NeedCode, number> {
  const counted = NEED_CODES.map(
    (code) => [code, students.filter((s) => hasNeed(s, code)).length] as const,
  );
  return new Map(counted.filter(([, n]) => n > 0));
}

/** The session to review next: of the student who needs it most, but not the one that is open. */
export const nextToReview = (
  students: readonly StudentRow[],
  openId: string | null = null,
): string | null =>
  students.find(({ nextSessionId }) => nextSessionId !== null && nextSessionId !== openId)
    ?.nextSessionId ?? null;

/** @returns the id one step on in the list; the nearest end where there is no further */
export function stepped(ids: readonly string[], from: string | null, step: 1 | -1): string | null {
  const at = from === null ? -1 : ids.indexOf(from);
  if (at < 0) return (step > 0 ? ids[0] : ids.at(-1)) ?? null;
  return ids[Math.min(ids.length - 1, Math.max(0, at + step))] ?? null;
}
