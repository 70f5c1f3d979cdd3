import { type Server, type Socket, createServer } from 'node:net';
import { STANDARD_GRAVITY } from '../../src/math/gravity.ts';
import type { ImuSample, SensorRole } from '../../src/sensors/sample.ts';

/** Bytes of one reading on the way to the radio's process: sensor u8, 3 spare, device time u32 us, 6 counts i16. */
export const READING_BYTES = 20;

export interface FedReading {
  readonly sensor: number;
  readonly us: number;
  readonly counts: readonly number[];
}

// the full scales that the virtual open-profile sensor tells
const ACC = 32768 / (16 * STANDARD_GRAVITY);
const GYRO = 32768 / ((2000 * Math.PI) / 180);
const count = (v: number): number => Math.max(-32768, Math.min(32767, Math.round(v)));

const countsOf = ({ acc, gyro }: ImuSample): number[] => [
  ...[acc.x, acc.y, acc.z].map((v) => count(v * ACC)),
  ...[gyro.x, gyro.y, gyro.z].map((v) => count(v * GYRO)),
];

function encode(sensor: number, sample: ImuSample): Buffer {
  const bytes = Buffer.alloc(READING_BYTES);
  bytes.writeUInt8(sensor, 0);
  bytes.writeUInt32LE(Math.round((sample.deviceTimeS ?? 0) * 1e6) % 2 ** 32, 4);
  countsOf(sample).forEach((c, i) => bytes.writeInt16LE(c, 8 + 2 * i));
  return bytes;
}

/** The reading whose bytes begin at `at`. */
export function decodeReading(bytes: Buffer, at: number): FedReading {
  return {
    sensor: bytes.readUInt8(at),
    us: bytes.readUInt32LE(at + 4),
    counts: Array.from({ length: 6 }, (_, i) => bytes.readInt16LE(at + 8 + 2 * i)),
  };
}

/**
 * A body that wears the virtual sensors: it lives outside the radio's process, so it goes on moving when that
 * process dies, and so do the sensors' clocks.
 */
export class Body {
  readonly #server: Server;
  readonly #open = new Set<Socket>();
  readonly #worn: readonly SensorRole[];

  /** @param worn who wears the room's sensors, in their order */
  constructor(path: string, worn: readonly SensorRole[]) {
    this.#worn = worn;
    this.#server = createServer((socket) => {
      this.#open.add(socket);
      const gone = (): void => void this.#open.delete(socket);
      socket.on('close', gone).on('error', gone);
    }).listen(path);
  }

  move(batch: readonly ImuSample[]): void {
    const bytes = Buffer.concat(batch.map((s) => encode(this.#worn.indexOf(s.sensor), s)));
    for (const socket of this.#open) socket.write(bytes);
  }

  end(): void {
    for (const socket of this.#open) socket.destroy();
    this.#server.close();
  }
}
