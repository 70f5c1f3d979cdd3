/** Offsets and signs of PKWARE's APPNOTE.TXT 6.3.10, sections 4.3.7, 4.3.12, 4.3.14-4.3.16. */
const LOCAL = 0x04034b50;
const CENTRAL = 0x02014b50;
const END = 0x06054b50;
const END_64 = 0x06064b50;
const LOCATOR_64 = 0x07064b50;

/** A zip of `count` empty files, with the larger end record that more than 65 535 of them need. Written by hand: `fflate` has none. */
export function manyFiles(count: number): Buffer {
  const names = Array.from({ length: count }, (_, i) => Buffer.from(`sub-01/f${i}`));
  const locals: Buffer[] = [];
  const centrals: Buffer[] = [];
  let at = 0;
  for (const name of names) {
    const local = Buffer.alloc(30);
    local.writeUInt32LE(LOCAL, 0);
    local.writeUInt16LE(20, 4);
    local.writeUInt16LE(name.length, 26);
    const central = Buffer.alloc(46);
    central.writeUInt32LE(CENTRAL, 0);
    central.writeUInt16LE(20, 6);
    central.writeUInt16LE(name.length, 28);
    central.writeUInt32LE(at, 42);
    locals.push(local, name);
    centrals.push(central, name);
    at += local.length + name.length;
  }
  const directory = Buffer.concat(centrals);
  return Buffer.concat([...locals, directory, ending(count, directory.length, at)]);
}

function ending(count: number, size: number, from: number): Buffer {
  const end64 = Buffer.alloc(56);
  end64.writeUInt32LE(END_64, 0);
  end64.writeBigUInt64LE(44n, 4);
  end64.writeUInt16LE(45, 12);
  end64.writeUInt16LE(45, 14);
  for (const offset of [24, 32]) end64.writeBigUInt64LE(BigInt(count), offset);
  end64.writeBigUInt64LE(BigInt(size), 40);
  end64.writeBigUInt64LE(BigInt(from), 48);
  const locator = Buffer.alloc(20);
  locator.writeUInt32LE(LOCATOR_64, 0);
  locator.writeBigUInt64LE(BigInt(from + size), 8);
  locator.writeUInt32LE(1, 16);
  const end = Buffer.alloc(22, 0xff);
  end.writeUInt32LE(END, 0);
  end.writeUInt32LE(0, 4);
  end.writeUInt16LE(0, 20);
  return Buffer.concat([end64, locator, end]);
}
