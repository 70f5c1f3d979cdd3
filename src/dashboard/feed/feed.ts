import { type Socket, io } from 'socket.io-client';
import type {
  ClientEvents,
  Command,
  CommandReply,
  DeskCommand,
  DeskView,
  PracticeView,
  ServerEvents,
} from '../../streaming/contract.ts';
import { mergeBatch } from './merge.ts';

export interface FeedState {
  readonly connection: 'connecting' | 'live' | 'lost';
  /** The newest view; stays while the connection is lost, so that nothing on the screen vanishes. */
  readonly view: PracticeView | null;
}

export interface Feed {
  state(): FeedState;
  /** Called at once with every message, even in a hidden tab: for sound. */
  onMessage(listener: (state: FeedState) => void): () => void;
  /** Called at most once a frame: for drawing. */
  onFrame(listener: (state: FeedState) => void): () => void;
  send(command: Command): Promise<CommandReply>;
  /** The sensors page: what it asks for, and what it is told while it is open. */
  sendDesk(command: DeskCommand): Promise<CommandReply>;
  onDesk(listener: (view: DeskView) => void): () => void;
  /** Nothing is heard or asked for any more. */
  close(): void;
}

type PageSocket = Socket<ServerEvents, ClientEvents>;

const AGAIN_MS = 300;
const NO_ANSWER = { ok: false, error: '' } as const;

function listeners<T>() {
  const all = new Set<(value: T) => void>();
  return {
    add: (listener: (value: T) => void) => {
      all.add(listener);
      return () => void all.delete(listener);
    },
    call: (value: T) => all.forEach((listener) => listener(value)),
  };
}

/** Registers every handler once; a reconnect uses the same ones. */
function follow(
  socket: PageSocket,
  set: (change: Partial<FeedState>) => void,
  get: () => FeedState,
) {
  socket.on('snapshot', ({ sequence, view }) => {
    set({ connection: 'live', view });
    socket.emit('seen', sequence);
  });
  socket.on('batch', (batch) => {
    const { view } = get();
    if (view !== null) set({ view: mergeBatch(view, batch) });
    socket.emit('seen', batch.sequence);
  });
  socket.on('disconnect', () => {
    set({ connection: 'lost' });
    // A service that says goodbye is not asked again by itself; it may come back all the same.
    if (!socket.active) setTimeout(() => socket.connect(), AGAIN_MS);
  });
  socket.on('connect_error', () =>
    set({ connection: get().view === null ? 'connecting' : 'lost' }),
  );
}

/** Opens the live stream of the service that this page came from. */
export function openFeed(): Feed {
  const socket: PageSocket = io({
    transports: ['websocket'],
    reconnectionDelay: AGAIN_MS,
    reconnectionDelayMax: 2000,
  });
  const onMessage = listeners<FeedState>();
  const onFrame = listeners<FeedState>();
  const onDesk = listeners<DeskView>();
  socket.on('desk', onDesk.call);
  let state: FeedState = { connection: 'connecting', view: null };
  let drawing = false;
  const draw = (): void => {
    drawing = false;
    onFrame.call(state);
  };
  const set = (change: Partial<FeedState>): void => {
    state = { ...state, ...change };
    onMessage.call(state);
    if (!drawing) requestAnimationFrame(draw);
    drawing = true;
  };
  follow(socket, set, () => state);
  const ask = (answer: Promise<CommandReply>): Promise<CommandReply> =>
    answer.catch(() => NO_ANSWER);
  return {
    state: () => state,
    onMessage: onMessage.add,
    onFrame: onFrame.add,
    send: (command) => ask(socket.timeout(3000).emitWithAck('command', command)),
    sendDesk: (command) => ask(socket.timeout(3000).emitWithAck('desk', command)),
    onDesk: onDesk.add,
    close: () => void socket.disconnect(),
  };
}
