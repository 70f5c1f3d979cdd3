import { seededRandom } from '../../../src/math/random.ts';

/** A simulated Bluetooth LE link from one sensor to one host. */
export interface Link {
  readonly rateHz: number;
  /** Connection interval, ms. */
  readonly intervalMs: number;
  /** Device clock against host clock, parts per million. */
  readonly ppm: number;
  readonly seconds: number;
  readonly seed: number;
  /** Share of connection events that fail; the packet waits for the next one. */
  readonly failed?: number;
  /** Samples in one packet. */
  readonly perPacket?: number;
  /** The device is asked for its time, four times a second and more often in the first seconds. */
  readonly asked?: boolean;
}

/** One packet: what the device says, when it came, and when its last sample was truly taken (all s). */
export interface Packet {
  readonly deviceS: number;
  readonly arrivalS: number;
  readonly trueS: number;
}

function beginning(link: Link) {
  const random = seededRandom(link.seed);
  const intervalS = link.intervalMs / 1000;
  const anchorS = random() * intervalS;
  const startS = random();
  return { random, intervalS, anchorS, startS, deviceStartS: random() * 1000 };
}

/**
 * Packets leave at the first connection event after they are ready that does not fail (in order), and the
 * host adds 0.2 ms and more (exponential, mean 0.4 ms), now and then a stall of up to 30 ms.
 */
export function* packets(link: Link): Generator<Packet> {
  const { random, intervalS, anchorS, startS, deviceStartS } = beginning(link);
  const stepS = (link.perPacket ?? 1) / link.rateHz;
  let earliest = 0;
  let lastArrivalS = 0;
  for (let k = 0; k * stepS < link.seconds; k++) {
    const trueS = startS + (k * stepS) / (1 + link.ppm * 1e-6);
    let event = Math.max(earliest, Math.ceil((trueS + 0.0002 - anchorS) / intervalS));
    while (random() < (link.failed ?? 0.1)) event += 1;
    earliest = event;
    const stall = random() < 0.002 ? random() * 0.03 : 0;
    const hostS = 0.0002 - 0.0004 * Math.log(1 - random()) + stall;
    lastArrivalS = Math.max(lastArrivalS, anchorS + event * intervalS + hostS);
    yield { deviceS: deviceStartS + k * stepS, arrivalS: lastArrivalS, trueS };
  }
}

/** What the device answered when it was asked for its time; it is known at `arrivalS`. */
export interface Answer {
  readonly deviceS: number;
  readonly sentS: number;
  readonly arrivalS: number;
}

/** How the device looks at its clock: after the radio's event, when its loop comes round (mean 1 ms, a choice). */
const LOOP_S = 0.001;

/**
 * Questions leave at the first connection event that does not fail, 0.2 ms and more after they were asked; the answer
 * comes with the next that does not.
 */
export function* answers(link: Link): Generator<Answer> {
  const { intervalS, anchorS, startS, deviceStartS } = beginning(link);
  const random = seededRandom(link.seed + 77_777);
  const late = (meanS: number): number => -meanS * Math.log(1 - random());
  const eventAfter = (timeS: number): number => {
    let event = Math.ceil((timeS - anchorS) / intervalS);
    while (random() < (link.failed ?? 0.1)) event += 1;
    return anchorS + event * intervalS;
  };
  let sentS = startS + 0.3;
  for (let n = 0; sentS < startS + link.seconds; n++) {
    const atDeviceS = eventAfter(sentS + 0.0002 + late(0.0004)) + late(LOOP_S);
    const arrivalS = eventAfter(atDeviceS + 0.0002) + 0.0002 + late(0.0004);
    const deviceS = deviceStartS + (atDeviceS - startS) * (1 + link.ppm * 1e-6);
    yield { deviceS: Math.round(deviceS * 1e6) / 1e6, sentS, arrivalS };
    sentS = Math.max(arrivalS, sentS + (n < 30 ? 0.1 : 0.25) * (0.8 + 0.4 * random()));
  }
}
