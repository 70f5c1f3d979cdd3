import { type FullScale, readingAt, viewOf } from './counts.ts';
import { type Decoder, type Packet, PacketError } from './packet.ts';

/** What the info characteristic says; its layout stands in firmware-notes/README.md. */
export interface OpenProfileInfo {
  readonly rateHz: number;
  readonly fullScale: FullScale;
  /** As the device was built for: 1 chest, 2 trail arm, 3 club, 0 any. */
  readonly role: number;
  readonly hardware: string;
  readonly firmware: string;
}

const VERSION = 1;
const HEADER = 8;
const SAMPLE = 12;
const INFO_HEADER = 12;

function checkInfo(info: OpenProfileInfo): OpenProfileInfo {
  const { rateHz, fullScale } = info;
  const sane =
    rateHz >= 10 &&
    rateHz <= 1000 &&
    fullScale.accG >= 1 &&
    fullScale.accG <= 400 &&
    fullScale.gyroDegPerS >= 100 &&
    fullScale.gyroDegPerS <= 10_000;
  if (!sane)
    throw new PacketError(
      'value',
      `The sensor's info makes no sense: ${rateHz} Hz, ${fullScale.accG} g, ${fullScale.gyroDegPerS} deg/s`,
    );
  return info;
}

/** Reads the info characteristic. @throws PacketError */
export function decodeOpenProfileInfo(bytes: Uint8Array): OpenProfileInfo {
  if (bytes.length < INFO_HEADER)
    throw new PacketError(
      'length',
      `Info has ${bytes.length} bytes, at least ${INFO_HEADER} needed`,
    );
  const view = viewOf(bytes);
  if (view.getUint8(0) !== VERSION)
    throw new PacketError('version', `Info version ${view.getUint8(0)}, this reads ${VERSION}`);
  const texts = String.fromCharCode(...bytes.subarray(INFO_HEADER)).split('\0');
  return checkInfo({
    role: view.getUint8(1),
    rateHz: view.getUint16(2, true) / 100,
    fullScale: {
      accG: view.getUint32(4, true) / 1000,
      gyroDegPerS: view.getUint32(8, true) / 1000,
    },
    hardware: texts[0] ?? '',
    firmware: texts[1] ?? '',
  });
}

/** Reads the clock characteristic: the device's clock as it was read, us. @throws PacketError */
export function decodeOpenProfileClock(bytes: Uint8Array): number {
  if (bytes.length !== 4)
    throw new PacketError('length', `A clock of ${bytes.length} bytes, 4 needed`);
  return viewOf(bytes).getUint32(0, true);
}

function decode(bytes: Uint8Array, fullScale: FullScale): Packet {
  if (bytes.length < HEADER)
    throw new PacketError('length', `Packet of ${bytes.length} bytes, at least ${HEADER} needed`);
  const view = viewOf(bytes);
  const version = view.getUint8(0);
  if (version !== VERSION)
    throw new PacketError('version', `Packet version ${version}, this reads ${VERSION}`);
  const n = view.getUint8(1);
  if (n === 0) throw new PacketError('count', 'Packet without samples');
  if (bytes.length !== HEADER + n * SAMPLE)
    throw new PacketError(
      'length',
      `Packet of ${bytes.length} bytes says ${n} samples, which take ${HEADER + n * SAMPLE}`,
    );
  const readings = Array.from({ length: n }, (_, i) =>
    readingAt(view, HEADER + i * SAMPLE, fullScale),
  );
  return { readings, sequence: view.getUint16(2, true), ticks: view.getUint32(4, true) };
}

/** Our open profile (firmware-notes/): version u8, n u8, sequence u16, t_us u32, n x 6 int16, little-endian. */
export const openProfileDecoder = (info: OpenProfileInfo): Decoder<null> => ({
  format: {
    rateHz: info.rateHz,
    ticks: { perS: 1e6, modulus: 2 ** 32 },
    sequenceModulus: 2 ** 16,
  },
  create: () => null,
  decode: (_state, bytes) => [decode(bytes, info.fullScale)],
});
