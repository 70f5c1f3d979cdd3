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
}

/** One packet: what the device says, when it came, and when its last sample was truly taken (all s). */
export interface Packet {
  readonly deviceS: number;
  readonly arrivalS: number;
  readonly trueS: number;
}

/**
 * Packets leave at the first connection event after they are ready that does not fail (in order), and the
 * host adds 0.2 ms and more (exponential, mean 0.4 ms), now and then a stall of up to 30 ms.
 */
export function* packets(link: Link): Generator<Packet> {
  const random = seededRandom(link.seed);
  const intervalS = link.intervalMs / 1000;
  const anchorS = random() * intervalS;
  const startS = random();
  const deviceStartS = random() * 1000;
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
