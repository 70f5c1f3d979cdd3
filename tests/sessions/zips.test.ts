import { readFileSync, readdirSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { Zip, ZipDeflate, ZipPassThrough, type Zippable, zipSync } from 'fflate';
import { describe, expect, it } from 'vitest';
import { LIMITS } from '../../src/sessions/files/sessionFiles.ts';
import { openSession } from '../../src/sessions/openSession.ts';
import { cli } from '../cli/run.ts';
import { manyFiles } from './manyFiles.ts';
import { MOTION, readAll, refusalOf, scratch, soundFiles } from './makeSession.ts';

const bytesOf = (files: Record<string, string | Buffer>): Record<string, Uint8Array> =>
  Object.fromEntries(
    Object.entries(files).map(([name, c]) => [name, new Uint8Array(Buffer.from(c))]),
  );

const sound = (): Record<string, Uint8Array> => bytesOf(soundFiles());

function saved(zip: Uint8Array): string {
  const path = join(scratch(), 'session.zip');
  writeFileSync(path, zip);
  return path;
}

const zipped = (entries: Zippable): string => saved(zipSync(entries));

/** A zip written entry by entry, so that a name can stand in it twice. */
function written(entries: readonly (readonly [name: string, bytes: Uint8Array])[]): string {
  const parts: Uint8Array[] = [];
  const zip = new Zip((_, part) => parts.push(part));
  for (const [name, bytes] of entries) {
    const entry = new ZipDeflate(name);
    zip.add(entry);
    entry.push(new Uint8Array(bytes), true);
  }
  zip.end();
  return saved(Buffer.concat(parts));
}

describe('A zip of a session', () => {
  it('is read, whether the session is its root or one folder in it, packed or not', async () => {
    const wrapped = Object.fromEntries(Object.entries(sound()).map(([n, b]) => [`a b/${n}`, b]));
    const withRubbish = {
      ...wrapped,
      '__MACOSX/a b/._x': new Uint8Array(3),
      '.DS_Store': new Uint8Array(3),
    };
    for (const entries of [sound(), wrapped, withRubbish])
      expect((await readAll(zipped(entries))).inputs).toHaveLength(604);
    expect((await readAll(saved(zipSync(sound(), { level: 0 })))).inputs).toHaveLength(604);
  });

  it('may be left half-way', async () => {
    const session = await openSession(zipped(sound()));
    for await (const batch of session.inputs()) {
      expect(batch.length).toBeGreaterThan(0);
      break;
    }
    await session.close();
  });
});

describe('A zip is refused', () => {
  it.each([
    ['a file name that climbs out', '../evil.tsv'],
    ['a file name that climbs out from within', 'sub-01/../../evil.tsv'],
    ['an absolute file name', '/etc/evil.tsv'],
    ['a drive', 'C:/evil.tsv'],
    ['a backslash', 'sub-01\\evil.tsv'],
  ])('with %s', async (_, name) => {
    const path = zipped({ ...sound(), [name]: new Uint8Array(4) });
    expect((await refusalOf(path)).code).toBe('unsafe-path');
    expect(readdirSync(dirname(path))).toEqual(['session.zip']);
  });

  it('with a link', async () => {
    const link: Zippable = { ...sound() };
    link[MOTION] = [Buffer.from('/etc/passwd'), { os: 3, attrs: 0o120777 << 16 }];
    const error = await refusalOf(zipped(link));
    expect(error.code).toBe('unsafe-path');
    expect(error.message).toContain(MOTION);
  });

  it.each([
    ['the same name twice', MOTION],
    ['names that differ in case only', MOTION.toUpperCase()],
  ])('with %s', async (_, name) => {
    const entries = [...Object.entries(sound()), [name, new Uint8Array(9)] as const];
    expect((await refusalOf(written(entries))).code).toBe('duplicate-name');
  });

  it('that unpacks to far more than its size', async () => {
    const bomb = zipped({ ...sound(), [MOTION]: new Uint8Array(40 * 2 ** 20) });
    const error = await refusalOf(bomb);
    expect(error.code).toBe('zip-limit');
    expect(error.message).toMatch(/bomb/);
  });

  it('that unpacks to far more than its size, all files together', async () => {
    const small = Array.from({ length: 30 }, (_, i) => [`x${i}`, new Uint8Array(2 ** 20)]);
    const error = await refusalOf(zipped({ ...sound(), ...Object.fromEntries(small) }));
    expect(error.code).toBe('zip-limit');
    expect(error.message).toMatch(/bomb/);
  });

  it('that holds 100 000 files, without a look at them', async () => {
    const path = saved(manyFiles(100_000));
    const before = process.memoryUsage().rss;
    const error = await refusalOf(path);
    expect(error.message).toBe('the zip holds 100000 files, far too many');
    expect((process.memoryUsage().rss - before) / 2 ** 20).toBeLessThan(50);
    const { code, err } = await cli('analyse', path);
    expect(code).toBe(3);
    expect(err).toMatch(/^[^\n]*100000 files, far too many[^\n]*\n$/);
  });

  it('that holds more than it may: files, one file, all together', async () => {
    const path = zipped(sound());
    const open = (limits: Partial<typeof LIMITS>) =>
      openSession(path, { limits: { ...LIMITS, ...limits } });
    await expect(open({ entries: 5 })).rejects.toMatchObject({ code: 'zip-limit' });
    await expect(open({ fileBytes: 20_000 })).rejects.toMatchObject({ code: 'zip-limit' });
    await expect(open({ totalBytes: 40_000 })).rejects.toMatchObject({ code: 'zip-limit' });
  });

  it('that lies about its sizes', async () => {
    // the size unpacked in the directory (22 bytes before its name is at +24) is set to a small number
    const bytes = readFileSync(zipped(sound()));
    const at = bytes.lastIndexOf(MOTION) - 46;
    expect(bytes.readUInt32LE(at)).toBe(0x02014b50);
    bytes.writeUInt32LE(1000, at + 24);
    const error = await refusalOf(saved(bytes));
    expect(error.code).toBe('zip-damaged');
    expect(error.message).toMatch(/more data than stated/);
  });

  it('that is cut short, empty, or something else', async () => {
    const bytes = readFileSync(zipped(sound()));
    expect((await refusalOf(saved(bytes.subarray(0, bytes.length / 2)))).code).toBe('not-a-zip');
    expect((await refusalOf(saved(new Uint8Array(0)))).code).toBe('not-a-zip');
    expect((await refusalOf(saved(Buffer.alloc(5000, 'no zip')))).code).toBe('not-a-zip');
    expect((await refusalOf(saved(zipSync({ 'a.txt': new Uint8Array(2) })))).code).toBe(
      'not-a-session',
    );
  });

  it('whose bytes were changed on the way', async () => {
    const parts: Uint8Array[] = [];
    const zip = new Zip((_, part) => parts.push(part));
    for (const [name, content] of Object.entries(sound())) {
      const entry = new ZipPassThrough(name);
      zip.add(entry);
      entry.push(new Uint8Array(content), true);
    }
    zip.end();
    const bytes = Buffer.concat(parts);
    const row = bytes.indexOf('\t0.001000\t', bytes.indexOf(MOTION) + 20_000);
    bytes[row + 4] = 0x39;
    const error = await refusalOf(saved(bytes));
    expect(error.code).toBe('zip-damaged');
    expect(error.message).toMatch(/checksum/);
  });

  it('whose packed bytes are garbage', async () => {
    const bytes = readFileSync(zipped(sound()));
    const local = bytes.indexOf(MOTION) + MOTION.length;
    bytes.fill(0xff, local + 10, local + 60);
    expect((await refusalOf(saved(bytes))).code).toBe('zip-damaged');
  });

  it('that needs a password', async () => {
    const bytes = readFileSync(zipped(sound()));
    const at = bytes.lastIndexOf(MOTION) - 46;
    bytes.writeUInt16LE(bytes.readUInt16LE(at + 8) | 1, at + 8);
    expect((await refusalOf(saved(bytes))).message).toMatch(/password/);
  });
});
