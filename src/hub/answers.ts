import Type, { type Static, type TSchema } from 'typebox';
import { NEED_CODES } from '../coaching/attention.ts';
import { NOT_COUNTED } from '../coaching/notCounted.ts';
import { STAGES, TARGET_MEASURES, type TargetMeasure } from '../coaching/plan.ts';
import { ANALYSIS_SCHEMA, type Same } from '../sessions/analysisSchema.ts';
import type { Inbox, UploadState } from '../streaming/hubContract/machine.ts';
import type { HubSession, HubSessionList } from '../streaming/hubContract/review.ts';
import type {
  HubProgress,
  PlanVersion,
  StudentList,
  StudentView,
} from '../streaming/hubContract/students.ts';
import { only, orNull } from './parts/api.ts';

// What routes answer with, for the description of the API only: nothing is served through these schemas. Each is held
// to the contract's type by the compiler (`Same`), and to real answers by tests.

const oneOf = <const V extends readonly string[]>(values: V) =>
  Type.Unsafe<V[number]>({ type: 'string', enum: [...values] });
const numberOrNull = Type.Unsafe<number | null>({ type: ['number', 'null'] });
const textOrNull = Type.Unsafe<string | null>({ type: ['string', 'null'] });
const booleanOrNull = Type.Unsafe<boolean | null>({ type: ['boolean', 'null'] });
/** Epoch ms. */
const ms = Type.Number({ description: 'Epoch ms.' });
const msOrNull = Type.Unsafe<number | null>({ type: ['number', 'null'], description: 'Epoch ms.' });
const count = Type.Integer({ minimum: 0 });
const pain = Type.Unsafe<number | null>({
  type: ['integer', 'null'],
  minimum: 0,
  maximum: 10,
  description: '0-10; null where it was not asked.',
});
const text = Type.String();
const hand = oneOf(['left', 'right']);
/** The same of each measure that a plan can ask for. */
const byMeasure = <T extends TSchema>(type: T) =>
  only(Object.fromEntries(TARGET_MEASURES.map((m) => [m, type])) as Record<TargetMeasure, T>);

const target = only({ min: Type.Optional(Type.Number()), max: Type.Optional(Type.Number()) });
const degrees = Type.Optional(Type.Number({ description: 'Degrees.' }));
const plan = only({
  schema: Type.Literal(1),
  name: text,
  stage: oneOf(Object.keys(STAGES) as (keyof typeof STAGES)[]),
  ratio: only({ rehearsals: count, balls: count }),
  targets: byMeasure(orNull(target)),
  ownRange: only({
    externalRotationDeg: degrees,
    flexionDeg: degrees,
    lateralTrailDeg: degrees,
    lateralLeadDeg: degrees,
  }),
  volume: only({ perSession: count, perWeek: count }),
  checklist: Type.Array(text),
  note: text,
});

const planVersion = only({
  id: text,
  number: Type.Integer({ minimum: 0 }),
  plan,
  validFromMs: ms,
  createdMs: ms,
  by: text,
  changes: Type.Array(text, { description: 'What is different from the version before.' }),
});

const lesson = only({ id: text, atMs: ms, text });

const painClosing = only({
  id: text,
  sessionId: text,
  throughMs: ms,
  reason: text,
  by: text,
  atMs: ms,
  reopenedMs: msOrNull,
});

const need = only({
  code: oneOf(NEED_CODES),
  text,
  sessionId: textOrNull,
  atMs: msOrNull,
  quote: textOrNull,
  answerTo: textOrNull,
});

const notCountedCounts = only({
  recording: count,
  analysing: count,
  failed: count,
  simulated: count,
});

const students = only({
  students: Type.Array(
    only({
      id: text,
      name: text,
      hand,
      needs: Type.Array(need),
      unreviewed: count,
      lastPracticeMs: msOrNull,
      weekRehearsals: count,
      weekBalls: count,
      weekNotCounted: notCountedCounts,
      simulatedSessions: count,
      nextSessionId: textOrNull,
      calm: count,
    }),
  ),
});

const student = only({
  id: text,
  name: text,
  hand,
  coach: text,
  joinedMs: ms,
  paired: Type.Boolean(),
  lastContactMs: msOrNull,
  needs: Type.Array(need),
  plan: planVersion,
  nextSessionId: textOrNull,
  painClosings: Type.Array(painClosing),
  planReachedMs: msOrNull,
  sessions: count,
  unreviewed: count,
  lessons: Type.Array(lesson),
});

const summary = only({
  id: text,
  name: text,
  startedAt: Type.String({ format: 'date-time' }),
  durationS: numberOrNull,
  hand,
  simulated: Type.Boolean(),
  notCounted: orNull(oneOf(NOT_COUNTED)),
  state: oneOf(['recording', 'complete', 'interrupted', 'unread']),
  deleted: Type.Boolean(),
  analysed: Type.Boolean(),
  problem: textOrNull,
  rehearsals: count,
  balls: count,
  practiceSwings: count,
  scored: count,
  passed: count,
  warnings: count,
  ballsInMix: count,
  mixKept: booleanOrNull,
  ledger: text,
  note: text,
  painBefore: pain,
  painAfter: pain,
});

const sessions = only({
  sessions: Type.Array(only({ summary, reviewedMs: msOrNull, comments: count })),
  more: Type.Boolean(),
});

const comment = only({
  id: text,
  by: text,
  byRole: oneOf(['coach', 'student']),
  mine: Type.Boolean(),
  atMs: ms,
  text,
  index: numberOrNull,
  momentS: numberOrNull,
  replyTo: textOrNull,
  onNote: Type.Boolean(),
});

const nextSession = only({ id: text, startedMs: ms });

const session = only({
  studentId: text,
  student: text,
  summary,
  plan,
  planNumber: numberOrNull,
  analysis: orNull(ANALYSIS_SCHEMA),
  notes: only({ note: text, painBefore: pain, painAfter: pain, editedMs: msOrNull }),
  reviewedMs: msOrNull,
  comments: Type.Array(comment),
  relabels: Type.Array(
    only({
      index: count,
      kind: oneOf(['rehearsal', 'ball', 'ignore']),
      originalKind: oneOf(['rehearsal', 'ball', 'practiceSwing']),
      by: text,
      atMs: ms,
    }),
  ),
  clips: Type.Array(
    only({
      id: text,
      name: text,
      type: oneOf(['video/mp4', 'video/webm']),
      bytes: count,
      by: text,
      startS: numberOrNull,
      view: orNull(oneOf(['face-on', 'down-the-line'])),
    }),
  ),
  differences: Type.Array(text),
  older: orNull(nextSession),
  newer: orNull(nextSession),
  analysing: Type.Boolean(),
  openPain: textOrNull,
});

const spread = only({
  count,
  low: Type.Number(),
  median: Type.Number(),
  high: Type.Number(),
});
const spreads = byMeasure(Type.Optional(spread));
const progress = only({
  sessions: Type.Array(
    only({
      id: text,
      startedMs: ms,
      simulated: Type.Boolean(),
      rehearsals: spreads,
      balls: spreads,
      rehearsalCount: count,
      ballCount: count,
      ballsInMix: count,
      scored: count,
      passed: count,
      warnings: count,
      painBefore: pain,
      painAfter: pain,
      planNumber: numberOrNull,
      carryOver: only({ addedFlexion: numberOrNull, keptRotation: numberOrNull }),
    }),
  ),
  notCounted: Type.Array(only({ startedMs: ms, notCounted: oneOf(NOT_COUNTED) })),
  plans: Type.Array(planVersion),
  lessons: Type.Array(lesson),
});

const inbox = only({
  student: text,
  coach: text,
  club: text,
  plan: orNull(planVersion),
  nextPlan: orNull(planVersion),
  threads: Type.Array(
    only({
      clientId: text,
      startedMs: ms,
      reviewedMs: msOrNull,
      comments: Type.Array(comment),
    }),
  ),
});

const uploadState = only({
  received: count,
  bytes: count,
  complete: Type.Boolean(),
  sameAs: Type.Optional(text),
});

/** Does not compile where schema and contract differ. */
type Held<S extends TSchema, T> = Same<Static<S>, T>;
true satisfies Held<typeof students, StudentList>;
true satisfies Held<typeof student, StudentView>;
true satisfies Held<typeof planVersion, PlanVersion>;
true satisfies Held<typeof sessions, HubSessionList>;
true satisfies Held<typeof session, HubSession>;
true satisfies Held<typeof progress, HubProgress>;
true satisfies Held<typeof inbox, Inbox>;
true satisfies Held<typeof uploadState, UploadState>;

/** By method and address. Those that are not here are described by their status alone. */
export const ANSWERS: Readonly<Record<string, TSchema>> = {
  'GET /api/students': students,
  'GET /api/students/:studentId': student,
  'GET /api/students/:studentId/plans': Type.Array(planVersion),
  'POST /api/students/:studentId/plans': planVersion,
  'GET /api/students/:studentId/sessions': sessions,
  'GET /api/students/:studentId/progress': progress,
  'GET /api/sessions/:sessionId': session,
  'POST /api/sessions/:sessionId/comments': comment,
  'GET /api/machine/inbox': inbox,
  'PUT /api/machine/uploads/:clientId': uploadState,
  'GET /api/machine/uploads/:clientId': uploadState,
  'PATCH /api/machine/uploads/:clientId': uploadState,
};
