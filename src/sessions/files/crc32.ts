import * as zlib from 'node:zlib';

/** ISO 3309 polynomial, reflected; the same sum that zip and PNG carry. */
const TABLE = Uint32Array.from({ length: 256 }, (_, n) => {
  let c = n;
  for (let k = 0; k < 8; k++) c = c & 1 ? 0xedb88320 ^ (c >>> 1) : c >>> 1;
  return c;
});

function tableCrc32(bytes: Uint8Array, before: number): number {
  let c = ~before;
  for (let i = 0; i < bytes.length; i++)
    c = (TABLE[(c ^ (bytes[i] as number)) & 255] as number) ^ (c >>> 8);
  return ~c >>> 0;
}

/** Continues the checksum `before` over `bytes`. Node brings a fast one from 20.15 on. */
export const crc32: (bytes: Uint8Array, before: number) => number = zlib.crc32 ?? tableCrc32;
