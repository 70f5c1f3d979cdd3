/** Bytes of a hex text; blanks are for the eye. */
export const hex = (text: string): Uint8Array =>
  Uint8Array.from(text.replace(/\s+/g, '').match(/../g) ?? [], (pair) => parseInt(pair, 16));

export interface OpenPacket {
  readonly sequence: number;
  readonly us: number;
  readonly counts: readonly (readonly number[])[];
}

/** Packet of the open profile, written by hand from its diagram (not by the code under test). */
export function openPacket({ sequence, us, counts }: OpenPacket): Uint8Array {
  const view = new DataView(new ArrayBuffer(8 + 12 * counts.length));
  view.setUint8(0, 1);
  view.setUint8(1, counts.length);
  view.setUint16(2, sequence, true);
  view.setUint32(4, us, true);
  counts.flat().forEach((c, i) => view.setInt16(8 + 2 * i, c, true));
  return new Uint8Array(view.buffer);
}

/** Frame of the WitMotion BLE 5 family. */
export function witFrame(counts: readonly number[]): Uint8Array {
  const view = new DataView(new ArrayBuffer(20));
  view.setUint8(0, 0x55);
  view.setUint8(1, 0x61);
  counts.forEach((c, i) => view.setInt16(2 + 2 * i, c, true));
  return new Uint8Array(view.buffer);
}

/** Payload of Movesense IMU6: m/s^2 and deg/s. */
export function imu6(
  ms: number,
  acc: readonly (readonly number[])[],
  gyro: readonly (readonly number[])[],
): Uint8Array {
  const values = [...acc.flat(), ...gyro.flat()];
  const view = new DataView(new ArrayBuffer(4 + 4 * values.length));
  view.setUint32(0, ms, true);
  values.forEach((v, i) => view.setFloat32(4 + 4 * i, v, true));
  return new Uint8Array(view.buffer);
}

export const concat = (...parts: readonly (Uint8Array | readonly number[])[]): Uint8Array =>
  Uint8Array.from(parts.flatMap((p) => [...p]));
