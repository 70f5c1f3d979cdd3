import type { LogCheck, LogEntry } from '../../../streaming/hubContract/log.ts';
import type {
  AcceptRequest,
  ClubStudent,
  ClubView,
  FailedAnalysis,
  Invitation,
  Invite,
  InviteRequest,
  LoginRequest,
  Machine,
  Me,
  NewInvite,
  PairingCode,
  PasswordRequest,
  Setup,
  SetupRequest,
} from '../../../streaming/hubContract/people.ts';
import { type Asking, part } from './asking.ts';

/** Accounts, invitations, machines and the club. */
export const peopleClient = ({ get, send }: Asking) => ({
  me: () => get<Me>('me'),
  setup: () => get<Setup>('setup'),
  setUp: (asked: SetupRequest) => send<Me>('POST', 'setup', asked),
  signIn: (asked: LoginRequest) => send<Me>('POST', 'login', asked),
  signOut: () => send<null>('POST', 'logout'),
  signOutElsewhere: () => send<null>('POST', 'me/sign-out-elsewhere'),
  changePassword: (asked: PasswordRequest) => send<null>('POST', 'me/password', asked),
  pairingCode: () => send<PairingCode>('POST', 'me/pairing'),
  invites: () => get<readonly Invite[]>('invites'),
  invite: (asked: InviteRequest) => send<NewInvite>('POST', 'invites', asked),
  dropInvite: (id: string) => send<null>('DELETE', `invites/${part(id)}`),
  invitation: (code: string) => get<Invitation>(`invitation/${part(code)}`),
  accept: (code: string, asked: AcceptRequest) =>
    send<Me>('POST', `invitation/${part(code)}`, asked),
  machines: (studentId: string) => get<readonly Machine[]>(`students/${part(studentId)}/machines`),
  revoke: (machineId: string) => send<null>('DELETE', `machines/${part(machineId)}`),
  changeCoach: (id: string, change: { readonly active: boolean }) =>
    send<null>('PATCH', `coaches/${part(id)}`, change),
  clubStudents: () => get<readonly ClubStudent[]>('club/students'),
  moveStudent: (studentId: string, coachId: string) =>
    send<null>('PUT', `students/${part(studentId)}/coach`, { coachId }),
  club: () => get<ClubView>('club'),
  failedAnalyses: () => get<readonly FailedAnalysis[]>('club/failed-analyses'),
  analyseAgain: (sessionId: string) =>
    send<null>('POST', `club/failed-analyses/${part(sessionId)}`),
  log: (before: number | null) =>
    get<readonly LogEntry[]>(`log${before === null ? '' : `?before=${before}`}`),
  checkLog: () => get<LogCheck>('log/check'),
});
