import { type Socket, io } from 'socket.io-client';
import type {
  ClientEvents,
  Command,
  CommandReply,
  DeskCommand,
  DeskView,
  ServerEvents,
} from '../../streaming/contract.ts';
import { AGAIN_MS, type PageClock, follow } from './follow.ts';
import { type FeedState, NOTHING_YET } from './state.ts';

export type { FeedState } from './state.ts';

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
  /** For how long the service has not been heard, ms. */
  silentMs(): number;
  /** The person has read that the practice was interrupted. */
  readInterruption(): void;
  /** Nothing is heard or asked for any more. */
  close(): void;
}

type FullSocket = Socket<ServerEvents, ClientEvents>;

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

const CLOCK: PageClock = {
  now: () => performance.now(),
  after: (callback, ms) => void setTimeout(callback, ms),
  every: (callback, ms) => {
    const timer = setInterval(callback, ms);
    return () => clearInterval(timer);
  },
};

/** Opens the live stream of the service that this page came from. */
export function openFeed(): Feed {
  const socket: FullSocket = io({
    transports: ['websocket'],
    reconnectionDelay: AGAIN_MS,
    reconnectionDelayMax: 2000,
  });
  const onMessage = listeners<FeedState>();
  const onFrame = listeners<FeedState>();
  const onDesk = listeners<DeskView>();
  socket.on('desk', onDesk.call);
  let state = NOTHING_YET;
  let drawing = false;
  const draw = (): void => {
    drawing = false;
    onFrame.call(state);
  };
  const set = (next: FeedState): void => {
    state = next;
    if (!drawing) requestAnimationFrame(draw);
    drawing = true;
    onMessage.call(state);
  };
  const following = follow(socket, CLOCK, () => state, set);
  const ask = (answer: Promise<CommandReply>): Promise<CommandReply> =>
    answer.catch(() => NO_ANSWER);
  return {
    state: () => state,
    onMessage: onMessage.add,
    onFrame: onFrame.add,
    send: (command) => ask(socket.timeout(3000).emitWithAck('command', command)),
    sendDesk: (command) => ask(socket.timeout(3000).emitWithAck('desk', command)),
    onDesk: onDesk.add,
    silentMs: () => performance.now() - following.heardMs(),
    readInterruption: () => set({ ...state, interrupted: null }),
    close: () => {
      following.stop();
      socket.disconnect();
    },
  };
}
