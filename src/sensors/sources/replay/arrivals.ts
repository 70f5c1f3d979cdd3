import type { ImuSample, SensorRole } from '../../sample.ts';
import type { SessionEvent } from '../../sessionEvent.ts';

/** What a recording gives, in order of session time. */
export type ReplayInput =
  | { readonly kind: 'sample'; readonly sample: ImuSample }
  | { readonly kind: 'event'; readonly event: SessionEvent };

/** What the host got at one instant: one packet of one sensor, or an event that was over. */
export type Arrival = { readonly atS: number } & (
  | { readonly kind: 'packet'; readonly samples: readonly ImuSample[] }
  | { readonly kind: 'event'; readonly event: SessionEvent }
);

interface OpenPacket {
  readonly atS: number;
  readonly samples: ImuSample[];
}

/** Samples that wait for the packet they came in to be whole. */
export interface ArrivalOrder {
  readonly open: Map<SensorRole, OpenPacket>;
  /** Latest arrival of each sensor, s: a link never overtakes itself. */
  readonly last: Map<SensorRole, number>;
  /** Whole packets and events not yet due, by time of arrival. */
  readonly waiting: Arrival[];
}

export const createArrivalOrder = (): ArrivalOrder => ({
  open: new Map(),
  last: new Map(),
  waiting: [],
});

/** An arrival time outside of these, s after the sample, is of another clock and means nothing. */
const EARLIEST_S = -1;
const LATEST_S = 10;

function arrivalOf({ timeS, arrivalTimeS }: ImuSample): number {
  if (arrivalTimeS === null) return timeS;
  const delay = arrivalTimeS - timeS;
  return delay >= EARLIEST_S && delay <= LATEST_S ? arrivalTimeS : timeS;
}

/** Takes the next input and gives what has arrived before it, in order of arrival. */
export function takeInput(order: ArrivalOrder, input: ReplayInput): readonly Arrival[] {
  if (input.kind === 'event') {
    const atS = input.event.onsetS + input.event.durationS;
    const due = arrivedBy(order, atS);
    return [...due, { kind: 'event', atS, event: input.event }];
  }
  const { sample } = input;
  const atS = Math.max(arrivalOf(sample), order.last.get(sample.sensor) ?? -Infinity);
  order.last.set(sample.sensor, atS);
  const open = order.open.get(sample.sensor);
  if (open?.atS === atS) {
    open.samples.push(sample);
    return [];
  }
  if (open !== undefined) close(order, sample.sensor, open);
  const due = arrivedBy(order, sample.timeS);
  order.open.set(sample.sensor, { atS, samples: [sample] });
  return due;
}

/** A sample cannot arrive before it was taken, so all that arrived by `timeS` is known. */
function arrivedBy(order: ArrivalOrder, timeS: number): Arrival[] {
  for (const [sensor, packet] of order.open) if (packet.atS < timeS) close(order, sensor, packet);
  let count = 0;
  while (count < order.waiting.length && (order.waiting[count] as Arrival).atS <= timeS) count++;
  return order.waiting.splice(0, count);
}

function close(order: ArrivalOrder, sensor: SensorRole, packet: OpenPacket): void {
  order.open.delete(sensor);
  const { waiting } = order;
  let at = waiting.length;
  while (at > 0 && (waiting[at - 1] as Arrival).atS > packet.atS) at--;
  waiting.splice(at, 0, { kind: 'packet', atS: packet.atS, samples: packet.samples });
}

/** Nothing more will come: gives the rest. */
export const takeRest = (order: ArrivalOrder): readonly Arrival[] => arrivedBy(order, Infinity);
