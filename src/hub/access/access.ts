import type { Role } from '../../streaming/hubContract/people.ts';

/** What an address names in its path; the guard finds out whose it is. */
export type Subject =
  'student' | 'session' | 'clip' | 'comment' | 'machine' | 'plan' | 'lesson' | 'painClosing';

/** Who may use a route. Every route of /api says one; without it the hub does not start. */
export type Access =
  /** Needs no account. */
  | { readonly who: 'anyone' }
  /** Whoever is signed in. */
  | { readonly who: 'signed-in' }
  | { readonly who: 'coach' }
  | { readonly who: 'owner' }
  /** A student who is signed in, about themselves. */
  | { readonly who: 'student' }
  /** The student whose it is, and their coach. */
  | { readonly who: 'student-or-coach'; readonly of: Subject }
  /** The coach of the student whose it is. */
  | { readonly who: 'coach-of'; readonly of: Subject }
  /** A student's machine, by its token. */
  | { readonly who: 'machine' };

export type Actor =
  | {
      readonly kind: 'person';
      readonly id: string;
      readonly name: string;
      readonly role: Role;
      readonly csrf: string;
      readonly tokenHash: string;
    }
  | { readonly kind: 'machine'; readonly id: string; readonly studentId: string };

/** Whose the subject is. */
export interface Owner {
  readonly studentId: string;
  readonly coachId: string | null;
}

export type Ruling =
  /** `sign-in`: nobody we know. `hidden`: as though it were not there. `forbidden`: not for this role. */
  'allowed' | 'sign-in' | 'hidden' | 'forbidden';

/** Pure: may `actor` use a route of `access`? `owner` is `null` where nothing of that name exists. */
export function rule(access: Access, actor: Actor | null, owner: Owner | null): Ruling {
  if (access.who === 'anyone') return 'allowed';
  if (actor === null) return 'sign-in';
  if (access.who === 'machine') return actor.kind === 'machine' ? 'allowed' : 'forbidden';
  if (actor.kind === 'machine') return 'forbidden';
  const coach = actor.role !== 'student';
  switch (access.who) {
    case 'signed-in':
      return 'allowed';
    case 'coach':
      return coach ? 'allowed' : 'forbidden';
    case 'owner':
      return actor.role === 'owner' ? 'allowed' : 'forbidden';
    case 'student':
      return coach ? 'forbidden' : 'allowed';
    case 'coach-of':
      if (!coach) return 'forbidden';
      return owner?.coachId === actor.id ? 'allowed' : 'hidden';
    case 'student-or-coach':
      return owner !== null && (coach ? owner.coachId : owner.studentId) === actor.id
        ? 'allowed'
        : 'hidden';
  }
}
