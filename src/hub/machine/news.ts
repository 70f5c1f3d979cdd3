import type { FastifyInstance } from 'fastify';
import type { HubContext } from '../context.ts';

/** Machines that wait until something changes for their student. */
export interface News {
  /** Something has changed for this student, or may have. */
  tell(studentId: string): void;
  /** Fulfilled with the next news, after `mostMs`, or when this machine asks anew: it waits once at a time. */
  wait(machine: Waits, mostMs: number, left: (hear: () => void) => void): Promise<void>;
  /** Lets all go. */
  close(): void;
}

interface Waits {
  readonly id: string;
  readonly studentId: string;
}

interface Waiter extends Waits {
  go(): void;
}

export function news(): News {
  const waiting = new Map<string, Waiter>();
  let closed = false;
  return {
    tell(studentId) {
      for (const waiter of [...waiting.values()]) if (waiter.studentId === studentId) waiter.go();
    },
    wait({ id, studentId }, mostMs, left) {
      waiting.get(id)?.go();
      return new Promise((resolve) => {
        const go = (): void => {
          clearTimeout(timer);
          if (waiting.get(id) === waiter) waiting.delete(id);
          resolve();
        };
        const timer = setTimeout(go, closed ? 0 : mostMs);
        const waiter: Waiter = { id, studentId, go };
        waiting.set(id, waiter);
        left(go);
      });
    },
    close() {
      closed = true;
      for (const waiter of [...waiting.values()]) waiter.go();
    },
  };
}

const ofHub = new WeakMap<HubContext, News>();

export function newsOf(context: HubContext): News {
  const found = ofHub.get(context) ?? news();
  ofHub.set(context, found);
  return found;
}

/** Whoever changes something of a student's, the student's machines hear of it. To be set up after the guard. */
export function tellMachines(api: FastifyInstance, context: HubContext): void {
  api.addHook('onResponse', async ({ method, about }, { statusCode }) => {
    if (about !== null && method !== 'GET' && method !== 'HEAD' && statusCode < 300)
      newsOf(context).tell(about);
  });
  api.addHook('preClose', async () => newsOf(context).close());
}
