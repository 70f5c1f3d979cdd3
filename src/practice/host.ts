import { BehaviorSubject, type Observable, switchMap } from 'rxjs';
import type { Stop } from './stops.ts';
import type { LivePractice, PracticeChange } from './livePractice.ts';
import type { PracticeCommand, Refusal } from './obey.ts';
import { type About, nameRefusal } from './about.ts';
import { REFUSALS } from './refusals.ts';
import { isOver } from './run.ts';

/** What kind of practice to begin. */
export interface Beginning {
  /** `demo`: a simulated student who practises at once. `guided`: a session of one's own. */
  readonly kind: 'demo' | 'guided';
  readonly hand: 'left' | 'right';
  /** Whose samples: of the sensors that are worn, or of a simulated student who does as asked. */
  readonly sensors: 'demo' | 'bluetooth';
}

export type HostCommand =
  | PracticeCommand
  | ({ readonly type: 'begin' } & Beginning)
  | ({ readonly type: 'about' } & About)
  /** The stop of today has been read. */
  | { readonly type: 'stop-read' };

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
  /** Keeps what a person says of themselves and gives back all that is known; left out where nothing is kept. */
  readonly keepAbout?: (about: About) => About;
  /** Keeps that the newest stop was read and gives it back; left out where nothing is kept. */
  readonly keepStopRead?: () => Stop | undefined;
}

/** A practice of one's own that is not over yet: its hand is settled. */
const isUnderWay = (practice: LivePractice): boolean => practice.guided && !isOver(practice.view());

export function practiceHost(options: HostOptions): PracticeHost {
  const { first, make, keep, keepAbout, keepStopRead } = options;
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
  const tell = ({ hand, name }: About): Refusal => {
    if (keepAbout === undefined) return REFUSALS['nobody-kept'];
    const refusal = name === undefined ? null : nameRefusal(name.trim());
    if (refusal !== null) return refusal;
    const practice = practices.value;
    if (hand !== undefined && isUnderWay(practice)) return REFUSALS['hand-later'];
    const about = keepAbout({
      ...(hand && { hand }),
      ...(name !== undefined && { name: name.trim() }),
    });
    practice.tellPerson({ about });
    return null;
  };
  const stopRead = (): Refusal => {
    const stop = keepStopRead?.();
    if (stop === undefined) return REFUSALS['no-stop'];
    practices.value.tellPerson({ stop });
    return null;
  };
  const obey = (command: HostCommand): Refusal => {
    if (command.type === 'begin') return begin(command);
    if (command.type === 'stop-read') return stopRead();
    return command.type === 'about' ? tell(command) : pass(command);
  };
  return {
    current: () => practices.value,
    practices,
    changes: practices.pipe(switchMap((practice) => practice.changes)),
    obey,
    stop: () => practices.value.stop(),
  };
}
