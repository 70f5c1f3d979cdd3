import { HUB_LINK_TEXTS } from '../streaming/hubContract/linkTexts.ts';
import Type from 'typebox';
import Compile from 'typebox/compile';
import type {
  Inbox,
  MachineComment,
  MachineNotes,
  PlanSeen,
  UploadRequest,
  UploadState,
} from '../streaming/hubContract/machine.ts';
import type { Paired, PairRequest } from '../streaming/hubContract/people.ts';

/** The hub said no, or did not answer (status 0). The message is for people. */
export class HubError extends Error {
  readonly status: number;
  readonly code: string;
  /** With a refused offset: what has come. */
  readonly received: number | null;

  constructor(status: number, code: string, message: string, received: number | null = null) {
    super(message);
    this.status = status;
    this.code = code;
    this.received = received;
  }

  /** It may work later. */
  get passing(): boolean {
    return this.status === 0 || this.status === 408 || this.status === 429 || this.status >= 500;
  }
}

const text = Type.String({ maxLength: 500 });
const paired = Compile(
  Type.Object({
    token: Type.String({ minLength: 20, maxLength: 200 }),
    student: text,
    coach: text,
    club: text,
  }),
);
const uploadState = Compile(
  Type.Object({
    received: Type.Integer({ minimum: 0 }),
    bytes: Type.Integer({ minimum: 0 }),
    complete: Type.Boolean(),
    sameAs: Type.Optional(text),
  }),
);
const version = Type.Object({
  id: text,
  number: Type.Integer(),
  plan: Type.Object({}),
  validFromMs: Type.Number(),
  by: text,
  changes: Type.Array(Type.String()),
});
const inbox = Compile(
  Type.Object({
    student: text,
    coach: text,
    club: text,
    plan: Type.Union([version, Type.Null()]),
    nextPlan: Type.Union([version, Type.Null()]),
    threads: Type.Array(
      Type.Object({
        clientId: text,
        startedMs: Type.Number(),
        reviewedMs: Type.Union([Type.Number(), Type.Null()]),
        comments: Type.Array(
          Type.Object({
            id: text,
            by: text,
            byRole: Type.Union([Type.Literal('coach'), Type.Literal('student')]),
            mine: Type.Boolean(),
            atMs: Type.Number(),
            text: Type.String(),
            index: Type.Union([Type.Integer(), Type.Null()]),
            momentS: Type.Union([Type.Number(), Type.Null()]),
            replyTo: Type.Union([text, Type.Null()]),
          }),
        ),
      }),
    ),
  }),
);

const NOT_MODIFIED = 304;

/** How long an answer may take, ms; a choice. The hub may have others' sessions to check before this one. */
const ANSWER_MS = 120_000;

export interface InboxAsked {
  /** Name of the inbox that is here. */
  readonly have: string | null;
  /** The hub may wait so long for another one, s. */
  readonly waitS?: number;
  /** Ends the question; left out: an answer may take its usual time. */
  readonly signal?: AbortSignal;
}

export interface NamedInbox {
  readonly inbox: Inbox;
  /** `null` where the hub names none. */
  readonly name: string | null;
}

export interface HubClient {
  announce(clientId: string, request: UploadRequest): Promise<UploadState>;
  send(clientId: string, offset: number, bytes: Uint8Array<ArrayBuffer>): Promise<UploadState>;
  /** What the hub has to say and its name; `null` where it is what `asked.have` names. */
  inbox(asked?: InboxAsked): Promise<NamedInbox | null>;
  comment(comment: MachineComment): Promise<void>;
  notes(clientId: string, notes: MachineNotes): Promise<void>;
  planSeen(planId: string): Promise<void>;
  /** The hub forgets this machine's token. */
  revoke(): Promise<void>;
}

interface Call {
  readonly method?: string;
  readonly token?: string;
  readonly json?: unknown;
  readonly body?: Uint8Array<ArrayBuffer>;
  readonly headers?: Readonly<Record<string, string>>;
  readonly signal?: AbortSignal | undefined;
}

const call = async (url: string, options: Call): Promise<unknown> =>
  (await ask(url, options)).value;

async function ask(url: string, { method = 'GET', token, json, body, headers, signal }: Call) {
  const sent = json === undefined ? body : JSON.stringify(json);
  const answer = await fetch(url, {
    method,
    // It would carry the token to somewhere else.
    redirect: 'error',
    signal: signal ?? AbortSignal.timeout(ANSWER_MS),
    headers: {
      ...(token !== undefined && { authorization: `Bearer ${token}` }),
      ...(json !== undefined && { 'content-type': 'application/json' }),
      ...headers,
    },
    ...(sent !== undefined && { body: sent }),
  }).catch(() => {
    throw new HubError(0, 'no-answer', HUB_LINK_TEXTS['no-answer']);
  });
  const value: unknown = await answer.json().catch(() => null);
  if (answer.ok || answer.status === NOT_MODIFIED)
    return { value, status: answer.status, etag: answer.headers.get('etag') };
  throw refusal(answer.status, value);
}

function refusal(status: number, value: unknown): HubError {
  const { error, received } = (value ?? {}) as {
    error?: { code?: unknown; message?: unknown };
    received?: unknown;
  };
  const code = typeof error?.code === 'string' ? error.code : 'failed';
  const message =
    typeof error?.message === 'string'
      ? error.message.slice(0, 500)
      : `The hub answered with ${status}.`;
  return new HubError(status, code, message, typeof received === 'number' ? received : null);
}

function checked<T>(check: { Check(value: unknown): boolean }, value: unknown): T {
  if (check.Check(value)) return value as T;
  throw new HubError(0, 'not-a-hub', HUB_LINK_TEXTS['not-a-hub']);
}

export async function pair(hubUrl: string, request: PairRequest): Promise<Paired> {
  return checked(paired, await call(`${hubUrl}/api/pair`, { method: 'POST', json: request }));
}

export function hubClient(hubUrl: string, token: string): HubClient {
  const at = (path: string, options: Call = {}) =>
    call(`${hubUrl}/api/machine${path}`, { token, ...options });
  return {
    announce: async (clientId, json) =>
      checked(uploadState, await at(`/uploads/${clientId}`, { method: 'PUT', json })),
    send: async (clientId, offset, body) =>
      checked(
        uploadState,
        await at(`/uploads/${clientId}`, {
          method: 'PATCH',
          body,
          headers: {
            'content-type': 'application/octet-stream',
            'upload-offset': String(offset),
          },
        }),
      ),
    async inbox({ have, waitS, signal } = { have: null }) {
      const path = waitS === undefined ? '/inbox' : `/inbox?waitS=${waitS}`;
      const headers = { ...(have !== null && { 'if-none-match': have }) };
      const { value, status, etag } = await ask(`${hubUrl}/api/machine${path}`, {
        token,
        headers,
        signal,
      });
      return status === NOT_MODIFIED ? null : { inbox: checked(inbox, value), name: etag };
    },
    comment: async (json) => void (await at('/comments', { method: 'POST', json })),
    notes: async (clientId, json) =>
      void (await at(`/sessions/${clientId}/notes`, { method: 'PATCH', json })),
    planSeen: async (planId) =>
      void (await at('/plan-seen', { method: 'POST', json: { planId } satisfies PlanSeen })),
    revoke: async () => void (await at('', { method: 'DELETE' })),
  };
}
