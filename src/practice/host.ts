import { BehaviorSubject, type Observable, switchMap } from 'rxjs';
import type { LivePractice, PracticeChange } from './livePractice.ts';
import type { PracticeCommand, Refusal } from './obey.ts';
import { REFUSALS } from './refusals.ts';

/** What kind of practice to begin. */
export interface Beginning {
  /** `demo`: a simulated student who practises at once. `guided`: a session of one's own. */
  readonly kind: 'demo' | 'guided';
  readonly hand: 'left' | 'right';
  /** Whose samples: of the sensors that are worn, or of a simulated student who does as asked. */
  readonly sensors: 'demo' | 'bluetooth';
}

export type HostCommand = PracticeCommand | ({ readonly type: 'begin' } & Beginning);

/** What a service does with the end of a practice: the person's words and numbers are kept. */
export interface PracticeRecord {
  readonly practice: LivePractice;
  readonly command: Extract<PracticeCommand, { type: 'close' | 'safety' }>;
}

/** Holds the one practice that is under way and replaces it when another begins. */
export interface PracticeHost {
  current(): LivePractice;
  /** The practice that is under way, at once and at each replacement. */
  readonly practices: Observable<LivePractice>;
  /** Changes of whichever practice is under way. */
  readonly changes: Observable<PracticeChange>;
  obey(command: HostCommand): Refusal;
  stop(): Promise<void>;
}

export interface HostOptions {
  readonly first: LivePractice;
  /** Makes a new practice, not started; left out where there can be only the first. */
  readonly make?: (beginning: Beginning) => LivePractice;
  /** Told after a command that says something worth keeping was obeyed. */
  readonly keep?: (record: PracticeRecord) => void;
}

export function practiceHost({ first, make, keep }: HostOptions): PracticeHost {
  const practices = new BehaviorSubject(first);
  const begin = (beginning: Beginning): Refusal => {
    if (make === undefined) return REFUSALS['only-a-recording'];
    const before = practices.value;
    const next = make(beginning);
    practices.next(next);
    next.start();
    void before.stop();
    return null;
  };
  const pass = (command: PracticeCommand): Refusal => {
    const practice = practices.value;
    const refusal = practice.obey(command);
    if (refusal === null && (command.type === 'close' || command.type === 'safety')) {
      keep?.({ practice, command });
    }
    return refusal;
  };
  return {
    current: () => practices.value,
    practices,
    changes: practices.pipe(switchMap((practice) => practice.changes)),
    obey: (command) => (command.type === 'begin' ? begin(command) : pass(command)),
    stop: () => practices.value.stop(),
  };
}
