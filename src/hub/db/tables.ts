import type { Generated, Kysely } from 'kysely';
import type { Role } from '../../streaming/hubContract/people.ts';

/** Flags are 0 and 1, times epoch ms (`...Ms`) or session s (`...S`), JSON is text. Ids are letters and digits. */

export interface ClubTable {
  /** Always 1: a hub serves one club. */
  id: number;
  name: string;
  demo: number;
}

export interface PersonTable {
  id: string;
  role: Role;
  name: string;
  /** Lower case; `null` for a student who has no account of their own. */
  login: string | null;
  passwordHash: string | null;
  /** 0: cannot sign in. */
  active: number;
  createdMs: number;
  /** Of a student. */
  coachId: string | null;
  hand: 'left' | 'right';
}

/** Someone signed in at some browser. Only hashes of what the browser holds are kept. */
export interface SigninTable {
  tokenHash: string;
  personId: string;
  csrf: string;
  createdMs: number;
  lastSeenMs: number;
  expiresMs: number;
}

export interface InviteTable {
  id: string;
  codeHash: string;
  role: 'coach' | 'student';
  name: string;
  byId: string;
  createdMs: number;
  expiresMs: number;
  usedMs: number | null;
  /** A student who is here already and gets a new way in. */
  personId: string | null;
}

export interface PairingTable {
  codeHash: string;
  studentId: string;
  expiresMs: number;
  usedMs: number | null;
}

export interface MachineTable {
  id: string;
  studentId: string;
  name: string;
  tokenHash: string;
  pairedMs: number;
  lastSeenMs: number | null;
  revokedMs: number | null;
}

export interface SessionTable {
  id: string;
  studentId: string;
  /** As the student's machine calls it; unique for one student. */
  clientId: string;
  /** Of the whole zip. */
  sha256: string;
  /** Names the recording by what it holds, whatever stands beside it in the zip; `null`: not known. */
  content: string | null;
  bytes: number;
  receivedMs: number;
  name: string;
  hand: 'left' | 'right';
  simulated: number;
  startedMs: number;
  durationS: number | null;
  /** 1 once the hub's own analysis is there. */
  analysed: number;
  /** Version that analysed it. */
  version: string | null;
  /** Why it could not be analysed, in words. */
  problem: string | null;
  rehearsals: number;
  scored: number;
  passed: number;
  balls: number;
  practiceSwings: number;
  ballsInMix: number;
  ledger: string;
  warnings: number;
  painBefore: number | null;
  painAfter: number | null;
  note: string;
  /** When the student changed the note after it had come; `null`: it is the first. */
  noteEditedMs: number | null;
  /** JSON of the `Plan` that it was done under. */
  plan: string;
  planNumber: number | null;
  /** JSON of `MeasureSpreads`. */
  spreads: string;
  /** JSON of `CarryOver`. */
  carryOver: string;
  /** JSON of sentences. */
  differences: string;
  reviewedMs: number | null;
  reviewedBy: string | null;
  /** The `calmReview` that marked it together with others; `null`: marked alone, or not. */
  reviewedIn: string | null;
}

export interface WarningTable {
  sessionId: string;
  position: number;
  warningId: string;
  atS: number;
  text: string;
}

/** Sessions that wait for their analysis. */
export interface JobTable {
  sessionId: string;
  queuedMs: number;
  tries: number;
  /** Why it failed last, in words; `null` while it has not. */
  problem: Generated<string | null>;
  failedMs: Generated<number | null>;
  /** Version that gave it up: it waits until somebody starts it again, or another version. `null`: it has its turn. */
  deadIn: Generated<string | null>;
}

export interface UploadTable {
  studentId: string;
  clientId: string;
  sha256: string;
  bytes: number;
  createdMs: number;
  /** The session that it became; `null` while it is under way. */
  sessionId: string | null;
}

export interface CommentTable {
  id: string;
  sessionId: string;
  authorId: string;
  atMs: number;
  text: string;
  repIndex: number | null;
  momentS: number | null;
  replyTo: string | null;
  /** 1: it answers the student's note of the session. */
  onNote: Generated<number>;
}

export interface RelabelTable {
  sessionId: string;
  repIndex: number;
  kind: 'rehearsal' | 'ball' | 'ignore';
  originalKind: 'rehearsal' | 'ball' | 'practiceSwing';
  /** Session s of the repetition's top: what a re-analysis finds it again by. */
  atS: number;
  byId: string;
  atMs: number;
}

export interface ClipTable {
  id: string;
  sessionId: string;
  byId: string;
  name: string;
  type: 'video/mp4' | 'video/webm';
  bytes: number;
  createdMs: number;
  startS: number | null;
  view: 'face-on' | 'down-the-line' | null;
}

export interface PlanTable {
  id: string;
  studentId: string;
  number: number;
  plan: string;
  validFromMs: number;
  createdMs: number;
  byId: string;
  reachedMs: number | null;
}

export interface TemplateTable {
  id: string;
  coachId: string;
  name: string;
  plan: string;
}

export interface BlockTable {
  id: string;
  coachId: string;
  title: string;
  text: string;
}

export interface LessonTable {
  id: string;
  studentId: string;
  atMs: number;
  text: string;
}

/** A coach looked into the pain of a student's sessions up to one, and closed it. */
export interface PainClosingTable {
  id: string;
  studentId: string;
  sessionId: string;
  /** Start of that session. */
  throughMs: number;
  reason: string;
  byId: string;
  atMs: number;
  /** Open again since; `null` while it is closed. */
  reopenedMs: number | null;
}

/** Only ever added to: ids and codes, no names. */
export interface LogTable {
  id: Generated<number>;
  atMs: number;
  byNumber: number | null;
  act: string;
  /** JSON: things by their numbers, and codes. */
  about: string;
  hash: string;
}

/** Where somebody acted from; goes with the person. */
export interface LogAddressTable {
  logId: number;
  address: string;
}

/** What the log's numbers stand for; `ref` is `null` once it is deleted. */
export interface LoggedTable {
  number: Generated<number>;
  kind: string;
  ref: string | null;
  role: string | null;
}

/** A browser from which a person signed in before. */
export interface DeviceTable {
  tokenHash: string;
  personId: string;
  createdMs: number;
}

export interface HubTables {
  club: ClubTable;
  person: PersonTable;
  signin: SigninTable;
  invite: InviteTable;
  pairing: PairingTable;
  machine: MachineTable;
  session: SessionTable;
  warning: WarningTable;
  job: JobTable;
  upload: UploadTable;
  comment: CommentTable;
  relabel: RelabelTable;
  clip: ClipTable;
  plan: PlanTable;
  template: TemplateTable;
  block: BlockTable;
  lesson: LessonTable;
  painClosing: PainClosingTable;
  log: LogTable;
  logAddress: LogAddressTable;
  device: DeviceTable;
  logged: LoggedTable;
}

export type Db = Kysely<HubTables>;
