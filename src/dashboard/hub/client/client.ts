import { type Asking, asking } from './asking.ts';
import { peopleClient } from './people.ts';
import { sessionsClient } from './sessions.ts';
import { studentsClient } from './students.ts';

const clientOf = (asked: Asking) => ({
  people: peopleClient(asked),
  students: studentsClient(asked),
  sessions: sessionsClient(asked),
  useToken: asked.useToken,
});

/** Everything that the pages ask of the hub. */
export type HubClient = ReturnType<typeof clientOf>;

export const hubClient = (signedOut: () => void): HubClient => clientOf(asking(signedOut));
