/** What the hub serves of people and how they come in, over HTTP. Types only. Times are epoch ms. */

/** An owner is a coach who also looks after the club: its coaches and its log. */
export type Role = 'owner' | 'coach' | 'student';

export interface Club {
  readonly name: string;
  /** Set where the people in it are invented and the sessions simulated. */
  readonly demo: boolean;
}

/** GET /api/me, and the answer to everything that signs a person in. */
export interface Me {
  readonly id: string;
  readonly name: string;
  readonly login: string;
  readonly role: Role;
  readonly club: Club;
  /** To be sent as `x-csrf-token` with everything that changes something. */
  readonly csrf: string;
}

/** GET /api/setup */
export interface Setup {
  /** True until the first coach is there. */
  readonly needed: boolean;
}

/** POST /api/setup. The code stands on the console of the machine that runs the hub. */
export interface SetupRequest {
  readonly code: string;
  readonly clubName: string;
  readonly name: string;
  readonly login: string;
  readonly password: string;
}

/** POST /api/login */
export interface LoginRequest {
  readonly login: string;
  readonly password: string;
}

/** POST /api/me/password: signs out every other place. */
export interface PasswordRequest {
  readonly current: string;
  readonly next: string;
}

/** One row a line, one character a module: 1 dark, 0 light. */
export type QrRows = readonly string[];

/** POST /api/invites. Owners invite coaches too. */
export interface InviteRequest {
  readonly role: 'coach' | 'student';
  readonly name: string;
  /** An own student who is here already: whoever has the link sets a new sign-in name and password. */
  readonly studentId?: string;
}

export interface Invite {
  readonly id: string;
  readonly role: 'coach' | 'student';
  readonly name: string;
  readonly createdMs: number;
  readonly expiresMs: number;
  /** `null` while it is open. */
  readonly usedMs: number | null;
}

/** Answer to POST /api/invites: the only time that the link is shown. */
export interface NewInvite extends Invite {
  readonly url: string;
  readonly qr: QrRows;
  /** From where the link can be opened. */
  readonly reach: Reach;
}

export type Reach = 'this-computer' | 'own-network' | 'anywhere';

/** GET /api/invitation/:code, for whoever has the link. */
export interface Invitation {
  readonly club: Club;
  readonly invitedBy: string;
  readonly role: 'coach' | 'student';
  readonly name: string;
  readonly expiresMs: number;
}

/** POST /api/invitation/:code: makes the account and signs in. `hand` of a student. */
export interface AcceptRequest {
  readonly name: string;
  readonly login: string;
  readonly password: string;
  readonly hand?: 'left' | 'right';
}

/** Answer to POST /api/me/pairing: a code for one machine, once. */
export interface PairingCode {
  readonly code: string;
  readonly expiresMs: number;
  /** Address of this hub, to be given to the machine together with the code. */
  readonly hubUrl: string;
  /** Both, for a machine with a camera. */
  readonly qr?: QrRows;
}

/** POST /api/pair, by a student's machine. */
export interface PairRequest {
  readonly code: string;
  /** What the student calls the machine. */
  readonly machine: string;
}

export interface Paired {
  /** To be sent as `authorization: Bearer ...`. */
  readonly token: string;
  readonly student: string;
  readonly coach: string;
  readonly club: string;
}

/** GET /api/students/:studentId/machines */
export interface Machine {
  readonly id: string;
  readonly name: string;
  readonly pairedMs: number;
  readonly lastSeenMs: number | null;
  readonly revokedMs: number | null;
}

/** GET /api/club, for the owner. */
export interface ClubView {
  readonly club: Club;
  readonly coaches: readonly CoachRow[];
}

export interface CoachRow {
  readonly id: string;
  readonly name: string;
  readonly role: 'owner' | 'coach';
  readonly students: number;
  /** A coach who left cannot sign in. */
  readonly active: boolean;
}

/** GET /api/club/students, for the owner: names only, to move one (PUT /api/students/:studentId/coach). */
export interface ClubStudent {
  readonly id: string;
  readonly name: string;
  readonly coachId: string;
}

/**
 * GET /api/club/failed-analyses, for the owner: what the hub gave up, newest first. POST /api/club/failed-analyses/:sessionId
 * starts it again; so does the coach by POST /api/sessions/:sessionId/analysis.
 */
export interface FailedAnalysis {
  /** Of the session. */
  readonly id: string;
  /** Name of the student's coach. */
  readonly coach: string;
  readonly receivedMs: number;
  readonly failedMs: number;
  readonly tries: number;
  /** Why, in words. */
  readonly problem: string;
}
