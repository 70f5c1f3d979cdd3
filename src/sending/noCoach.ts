import { Refused } from '../streaming/apiErrors.ts';
import { HUB_LINK_TEXTS } from '../streaming/hubContract/linkTexts.ts';
import type { CoachService } from './coachLink.ts';

const WHY = HUB_LINK_TEXTS['not-kept'];
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
