import type { JudgedRepetition } from '../../../coaching/judgement.ts';

export type EventName = 'start' | 'top' | 'release' | 'armStart' | 'catch' | 'delivery' | 'impact';

export interface RepetitionEvent {
  readonly name: EventName;
  /** Session s. */
  readonly timeS: number;
}

/** What happened in a repetition, in order; what was not seen is left out. */
export function eventsOf(r: JudgedRepetition): readonly RepetitionEvent[] {
  const events: (readonly [EventName, number | null])[] = [
    ['start', r.startS],
    ['top', r.topS],
    ...(r.kind === 'rehearsal'
      ? ([
          ['release', r.releaseS],
          ['armStart', r.armStartS],
          ['catch', r.catchS],
        ] as const)
      : ([['delivery', r.deliveryS]] as const)),
    ...(r.kind === 'ball' ? ([['impact', r.impactS]] as const) : []),
  ];
  return events
    .flatMap(([name, timeS]) => (timeS === null ? [] : [{ name, timeS }]))
    .sort((a, b) => a.timeS - b.timeS);
}

/** Session s that repetitions are laid over each other at: release of a rehearsal, else delivery. */
export const alignOf = (r: JudgedRepetition): number =>
  r.kind === 'rehearsal' ? r.releaseS : r.deliveryS;

/** The event after `timeS`, or the first one when there is none: for going from moment to moment. */
export const eventAfter = (
  events: readonly RepetitionEvent[],
  timeS: number,
): RepetitionEvent | undefined => events.find((e) => e.timeS > timeS + 0.005) ?? events[0];
