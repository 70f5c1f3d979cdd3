import type { Server } from 'socket.io';
import Type, { type TSchema } from 'typebox';
import Compile from 'typebox/compile';
import type { DeskCommand, DeskView } from '../sensors/sources/deskView.ts';
import { DESK_TEXTS } from '../sensors/sources/radioTexts.ts';
import { bound } from './bound.ts';
import type { ClientEvents, CommandReply, ServerEvents } from './contract.ts';

/** What stands behind the sensors page. */
export interface DeskService {
  readonly view: DeskView;
  /** @returns what is wrong, in words; `null` where it was done */
  obey(command: DeskCommand): string | null;
}

const EVERY_MS = 200;

const literals = <T extends string>(...values: readonly T[]) =>
  Type.Union(values.map((value) => Type.Literal(value)));
const command = <T extends Record<string, TSchema>>(fields: T) =>
  Type.Object(fields, { additionalProperties: false });
const id = Type.String({ minLength: 1, maxLength: 200 });
const role = literals('chest', 'trailArm', 'club');

const validator = Compile(
  Type.Union([
    command({ type: literals('open', 'close', 'swap', 'cancel-tap', 'sync') }),
    command({ type: Type.Literal('assign'), id, role }),
    command({ type: Type.Literal('assign-by-tap'), role }),
    command({ type: literals('forget', 'identify'), id }),
  ]),
);

const replyOf = (error: string | null): CommandReply =>
  error === null ? { ok: true } : { ok: false, error };

/** Opens and closes once for each page, however often it asks. */
function obey<Page>(
  desk: DeskService,
  open: Set<Page>,
  socket: Page,
  value: unknown,
): CommandReply {
  if (!validator.Check(value)) return { ok: false, error: DESK_TEXTS['unknown-command'] };
  const asked = value as DeskCommand;
  if (asked.type === 'open' && open.has(socket)) return { ok: true };
  if (asked.type === 'close' && !open.delete(socket)) return { ok: true };
  if (asked.type === 'open') open.add(socket);
  return replyOf(desk.obey(asked));
}

/** Serves the sensors page of every client. @returns what to call at the end */
export function attachDesk<Data>(
  io: Server<ClientEvents, ServerEvents, Record<string, never>, Data>,
  desk: DeskService,
): () => void {
  const open = new Set<Parameters<Parameters<typeof io.on>[1]>[0]>();
  const tell = (): void => {
    if (open.size === 0) return;
    const view = bound(desk.view);
    for (const socket of open) socket.volatile.emit('desk', view);
  };
  io.on('connection', (socket) => {
    socket.on('desk', (value: unknown, reply: unknown) => {
      const answer = obey(desk, open, socket, value);
      if (typeof reply === 'function') reply(answer);
      tell();
    });
    socket.on('disconnect', () => {
      if (open.delete(socket)) desk.obey({ type: 'close' });
    });
  });
  const timer = setInterval(tell, EVERY_MS);
  return () => clearInterval(timer);
}
