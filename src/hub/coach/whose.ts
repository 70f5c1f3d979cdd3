import { type RawBuilder, sql } from 'kysely';

/** The students that are asked about: a coach's, or one. */
export type Whose = { readonly coachId: string } | { readonly studentId: string };

/** As a condition on `person p`. */
export const those = (whose: Whose): RawBuilder<unknown> =>
  'coachId' in whose
    ? sql`p.coachId = ${whose.coachId} and p.role = 'student'`
    : sql`p.id = ${whose.studentId}`;
