import { HUB_LINK_TEXTS } from '../streaming/hubContract/linkTexts.ts';
import { randomUUID } from 'node:crypto';
import { join } from 'node:path';
import type { Plan } from '../coaching/plan.ts';
import { validatePlan } from '../coaching/validatePlan.ts';
import { SessionError } from '../sessions/sessionError.ts';
import type { SessionStore } from '../sessions/store/store.ts';
import { Refused } from '../streaming/apiErrors.ts';
import type {
  CoachLink,
  ConnectRequest,
  ConsentRequest,
  ReplyRequest,
} from '../streaming/hubContract/coachLink.ts';
import { type HubClient, HubError, hubClient, pair } from './hubClient.ts';
import { checkedHubUrl } from './hubUrl.ts';
import { type LinkFile, NOT_CONNECTED, linkFile } from './linkFile.ts';
import { packedNotesName, sendEditedNotes } from './editedNotes.ts';
import { type ListeningOptions, listening } from './listening.ts';
import { fetchInbox, sendOutbox } from './messages.ts';
import { pack, tidyPacked, unpack } from './packing.ts';
import { rounds } from './rounds.ts';
import { upload } from './upload.ts';
import { type Sending, connectionView, rows, unread, wanted } from './wanted.ts';

/** The student's side of the connection with a coach: sends in the background, fetches, never in the way of a practice. */
export interface CoachService {
  view(): Promise<CoachLink>;
  connect(request: ConnectRequest): Promise<void>;
  consent(request: ConsentRequest): void;
  /** Sending stops at once; what was sent stays at the hub. */
  disconnect(): Promise<void>;
  reply(request: ReplyRequest): void;
  seen(): void;
  /** The coach's plan that is valid now; `null` where there is none. */
  plan(): Plan | null;
  /** There is something new to send. */
  wake(): void;
  close(): Promise<void>;
}

export interface CoachServiceOptions {
  readonly store: SessionStore;
  /** Epoch ms. */
  readonly now: () => number;
  /** For the terminal. */
  readonly say: (sentence: string) => void;
  /** A practice is being measured: sending goes slower. */
  readonly practising: () => boolean;
  /** A session of which the person is still asked how it was: it is sent once that is said. */
  readonly held?: () => string | null;
  /** A page is open: what the coach changes is heard of within seconds. */
  readonly watched?: () => boolean;
  /** For tests: pauses after failures, and between questions while a page is open, ms. */
  readonly pausesMs?: readonly number[];
  readonly listeningMs?: ListeningOptions['pausesMs'];
}

/** Starts where the last run of the program ended. */
export function coachService(options: CoachServiceOptions): CoachService {
  const { store, now, say } = options;
  const whole = linkFile(join(store.places.root, 'coach.json'), say);
  const folder = join(store.places.root, 'sending');
  let sending: Sending | null = null;
  let stop = new AbortController();
  const round = async (): Promise<string | null> => {
    const client = clientOf(whole);
    if (client === null) return null;
    const file = ofThisConnection(whole);
    const why = await sendOutbox(client, file);
    await fetchInbox(client, file, now);
    const sent = await sendAll({ ...options, file, folder, client, signal: stop.signal }, (s) => {
      sending = s;
    });
    const refused = await sendEditedNotes(client, file, await store.list());
    if (sent === 0) return why ?? refused;
    const still = await sendOutbox(client, file);
    await fetchInbox(client, file, now);
    return why ?? refused ?? still;
  };
  const going = rounds({
    now,
    pausesMs: options.pausesMs,
    round: () =>
      round()
        .catch(wordsOf)
        .finally(() => (sending = null)),
  });
  const stopListening = listening({
    ...heard(whole, options),
    pausesMs: options.listeningMs,
  });
  const stopSending = (): void => {
    stop.abort();
    stop = new AbortController();
  };
  return {
    async view() {
      const state = whole.read();
      const { consent, lastContactMs, inbox, outbox } = state;
      return {
        connection: connectionView(state),
        consent,
        ...(state.connection === null ? { problem: null, nextTryMs: null } : going.state()),
        lastContactMs,
        sessions: rows(state, await store.list(), sending),
        inbox,
        outbox,
        unread: unread(state).length,
      };
    },
    async connect(request) {
      await connect(whole, request, now());
      going.wake();
    },
    consent({ send, older = false }) {
      refuseUnconnected(whole);
      whole.change({ consent: { send, older, atMs: now() } });
      if (!send) stopSending();
      going.wake();
    },
    async disconnect() {
      stopSending();
      await clientOf(whole)
        ?.revoke()
        .catch(() => undefined);
      whole.change(NOT_CONNECTED);
      await tidyPacked(folder, new Set());
    },
    reply(request) {
      refuseUnconnected(whole);
      const id = randomUUID().replaceAll('-', '');
      whole.change({ outbox: [...whole.read().outbox, { ...request, id, atMs: now() }] });
      going.wake();
    },
    seen() {
      const state = whole.read();
      whole.change({ seen: [...state.seen, ...unread(state)].slice(-2000) });
    },
    plan: () => planOf(whole, now()),
    wake: going.wake,
    async close() {
      stop.abort();
      stopListening();
      await going.close();
    },
  };
}

/** The hub holds an answer back for so long at most, s: before a proxy on the way ends it. A choice. */
const WAIT_S = 25;

/** Waits at the hub for another inbox than the one that is here. */
function heard(
  whole: LinkFile,
  { now, watched = () => false }: CoachServiceOptions,
): Pick<ListeningOptions, 'wanted' | 'ask'> {
  let of: string | undefined;
  let have: string | null = null;
  return {
    wanted: () => whole.read().connection !== null && watched(),
    async ask(signal) {
      const client = clientOf(whole);
      if (client === null) return;
      const token = whole.read().connection?.token;
      if (token !== of) [of, have] = [token, null];
      have = await fetchInbox(client, ofThisConnection(whole), now, {
        have,
        ...(have !== null && { waitS: WAIT_S }),
        signal,
      });
    },
  };
}

function refuseUnconnected(file: LinkFile): void {
  if (file.read().connection === null)
    throw new Refused(409, 'not-connected', HUB_LINK_TEXTS['not-connected']);
}

function clientOf(file: LinkFile): HubClient | null {
  const { connection } = file.read();
  return connection && hubClient(connection.hubUrl, connection.token);
}

async function connect(file: LinkFile, request: ConnectRequest, nowMs: number): Promise<void> {
  if (file.read().connection !== null)
    throw new Refused(409, 'connected', HUB_LINK_TEXTS.connected);
  const hubUrl = checkedHubUrl(request.hubUrl, request.plain === true);
  const { code, machine } = request;
  const paired = await pair(hubUrl, { code, machine }).catch((error: unknown) => {
    if (!(error instanceof HubError)) throw error;
    throw new Refused(error.status === 0 ? 502 : 400, error.code, error.message);
  });
  file.change({ ...NOT_CONNECTED, connection: { ...paired, hubUrl, machine, sinceMs: nowMs } });
}

/** Why a round did not succeed, in words; a wish to stop is none. */
function wordsOf(error: unknown): string | null {
  if (error instanceof HubError)
    return error.status === 401 ? HUB_LINK_TEXTS['unknown-here'] : error.message;
  if (error instanceof Error && error.name === 'AbortError') return null;
  return `Sending failed: ${error instanceof Error ? error.message : String(error)}`;
}

function planOf(file: LinkFile, nowMs: number): Plan | null {
  const { plan = null, nextPlan = null } = file.read().inbox ?? {};
  const due = nextPlan !== null && nextPlan.validFromMs <= nowMs ? nextPlan : plan;
  return due === null ? null : (validatePlan(due.plan).plan ?? null);
}

/** What comes late from a hub that was disconnected meanwhile is dropped. */
function ofThisConnection(file: LinkFile): LinkFile {
  const token = file.read().connection?.token;
  return {
    read: file.read,
    change: (part) => {
      if (file.read().connection?.token === token) file.change(part);
    },
  };
}

interface Task extends CoachServiceOptions {
  readonly file: LinkFile;
  readonly folder: string;
  readonly client: HubClient;
  readonly signal: AbortSignal;
}

/** One session after the other; each is looked up again, as it may have been deleted meanwhile. @returns how many were sent */
async function sendAll(task: Task, tell: (sending: Sending | null) => void): Promise<number> {
  const { store, file, folder, signal } = task;
  const waiting = async () => {
    const held = task.held?.() ?? null;
    return wanted(file.read(), await store.list()).filter(({ id }) => id !== held);
  };
  await tidyPacked(folder, new Set((await waiting()).map(({ id }) => id)));
  for (let sent = 0; ; sent++) {
    signal.throwIfAborted();
    const [next] = await waiting();
    if (next === undefined) return sent;
    tell({ id: next.id, share: 0 });
    await sendOne(task, next.id, (share) => tell({ id: next.id, share }));
    tell(null);
  }
}

async function sendOne(task: Task, id: string, tell: (share: number) => void): Promise<void> {
  const { store, file, folder, client, practising, signal, now } = task;
  let notes: string | undefined;
  const mark = (state: 'sent' | 'refused', why: string | null): void => {
    const entry = { state, why, atMs: now(), ...(notes !== undefined && { notes }) };
    file.change({ sessions: { ...file.read().sessions, [id]: entry } });
  };
  try {
    const packed = await pack(store, folder, id);
    notes = await packedNotesName(packed.path);
    const sameAs = await upload(client, id, packed, {
      practising,
      progress: (sent) => tell(sent / packed.bytes),
      signal,
    });
    mark('sent', sameAs === null ? null : HUB_LINK_TEXTS['same-there']);
  } catch (error) {
    if (error instanceof SessionError) mark('refused', error.message);
    else if (!(error instanceof HubError) || error.passing || error.status === 401) throw error;
    else if (error.code === 'exists') mark('sent', error.message);
    else mark('refused', error.message);
  }
  await unpack(folder, id);
}
