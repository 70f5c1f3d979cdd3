import { Refused } from '../streaming/apiErrors.ts';
import type { CoachService } from './coachLink.ts';

const WHY = 'Practices are not kept now, so nothing can be sent to a coach.';
const refuse = (): never => {
  throw new Refused(503, 'not-kept', WHY);
};

/** Where nothing is kept: it says so, and nothing else. */
export const noCoach: CoachService = {
  view: () =>
    Promise.resolve({
      connection: null,
      consent: null,
      problem: WHY,
      nextTryMs: null,
      lastContactMs: null,
      sessions: [],
      inbox: null,
      outbox: [],
      unread: 0,
    }),
  connect: async () => refuse(),
  consent: refuse,
  disconnect: async () => refuse(),
  reply: refuse,
  seen: refuse,
  plan: () => null,
  wake: () => undefined,
  close: () => Promise.resolve(),
};
