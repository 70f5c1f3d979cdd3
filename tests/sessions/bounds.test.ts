import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { type Zippable, zipSync } from 'fflate';
import { describe, expect, it } from 'vitest';
import { openSession } from '../../src/sessions/openSession.ts';
import { numberIn } from '../../src/sessions/read/number.ts';
import { cpuMs } from './cpuMs.ts';
import {
  CHANNELS,
  type FileTree,
  MOTION,
  STEM,
  refusalOf,
  restRows,
  scratch,
  soundFiles,
  tsv,
  writeTree,
} from './makeSession.ts';

const EVENTS = `${STEM}_events.tsv`;
const DESCRIPTION = 'dataset_description.json';
const SIDECAR = `${STEM}_tracksys-chest_motion.json`;
const text = (name: string): string => String(soundFiles()[name]);

const withFiles = (change: FileTree): FileTree => ({ ...soundFiles(), ...change });

/** In a zip, nothing in it packed: in a folder of this machine some names could not be. */
function zipped(files: FileTree): string {
  const path = join(scratch(), 'session.zip');
  const bytes = Object.entries(files).map(([name, content]) => [name, Buffer.from(content)]);
  writeFileSync(path, zipSync(Object.fromEntries(bytes) as Zippable, { level: 0 }));
  return path;
}

/** `count` channels in all, the file's rows as wide. */
const channels = (count: number, name = (n: number): string => `extra${n}`): FileTree => {
  const more = Array.from({ length: count - 9 }, (_, n) => name(n));
  return withFiles({
    [CHANNELS]: text(CHANNELS) + more.map((n) => `${n}\tn/a\tMISC\tp\tV\tx\n`).join(''),
    [MOTION]: tsv(restRows().map((cells) => [...cells, ...more.map(() => '0')])),
  });
};
const events = (rows: readonly string[]): FileTree =>
  withFiles({ [EVENTS]: `${text(EVENTS)}${rows.map((row) => `${row}\n`).join('')}` });
const times = (count: number, row: string): string[] => Array.from({ length: count }, () => row);
const said = (name: string, field: string, value: string): FileTree =>
  withFiles({
    [name]: JSON.stringify({ ...(JSON.parse(text(name)) as object), [field]: value }),
  });
const LONG = 'é'.repeat(101);

describe('what a recording may have at most', () => {
  it.each<[string, FileTree]>([
    ['1 000 channels', channels(1000)],
    ['a channel of 200 bytes', channels(10, () => 'x'.repeat(200))],
    ['100 000 events', events(times(100_000 - 4, '1\t0\tpain\t5'))],
    ['a name of 200 bytes', said(DESCRIPTION, 'Name', 'é'.repeat(100))],
    ['a file name of 200 bytes', withFiles({ ['n'.repeat(200)]: '' })],
  ])('is taken: %s', async (_what, files) => {
    await (await openSession(zipped(files))).close();
  });

  it.each<[string, FileTree, string, RegExp]>([
    ['channels', channels(1001), 'too-many', /channels\.tsv, line \d+: more than 1000 channels$/],
    [
      'long channel names',
      channels(10, () => LONG),
      'too-long',
      /channels\.tsv: the name of a channel has more than 200 bytes$/,
    ],
    [
      'events',
      events(times(100_000, '1\t0\tpain\t5')),
      'too-many',
      /_events\.tsv, line 100002: more than 100000 events$/,
    ],
    [
      'calibration steps',
      events(times(200, '1\t0.1\tcalibration-stand\tn/a')),
      'too-many',
      /_events\.tsv: 204 calibration steps; at most 200$/,
    ],
    ['a long name', said(DESCRIPTION, 'Name', LONG), 'too-long', /the name has more than 200 byt/],
    [
      'a long model',
      said(SIDECAR, 'ManufacturersModelName', LONG),
      'too-long',
      /ManufacturersModelName has more than 200 bytes/,
    ],
    [
      'a long file name',
      withFiles({ [`sub-01/${'n'.repeat(201)}`]: '' }),
      'too-long',
      /^sub-01\/n+ …: its name has more than 200 bytes$/,
    ],
    [
      'a long path',
      withFiles({ [`sub-01/${`${'n'.repeat(190)}/`.repeat(6)}x`]: '' }),
      'too-long',
      /its path has more than 1000 bytes$/,
    ],
    [
      'folders',
      withFiles({ [`sub-01/${'f/'.repeat(20)}x`]: '' }),
      'unsafe-path',
      /it lies more than 20 folders deep$/,
    ],
    [
      'bytes of a description',
      said(DESCRIPTION, 'Notes', 'x'.repeat(300_000)),
      'too-large',
      /^dataset_description\.json: has more than 256 kB$/,
    ],
    [
      'columns',
      withFiles({ 'participants.tsv': `participant_id${'\tx'.repeat(1000)}\n` }),
      'too-many',
      /participants\.tsv, line 1: 1001 columns; at most 1000$/,
    ],
  ])('is not: too many %s', async (_what, files, code, sentence) => {
    const error = await refusalOf(zipped(files));
    expect(error).toMatchObject({ code });
    expect(error.message).toMatch(sentence);
  });

  it.each<[string, FileTree]>([
    ['a line break in a file name', withFiles({ 'sub-01/é\r\nb': '' })],
    ['NUL in a file name', withFiles({ 'sub-01/a\0b': '' })],
    ['a turned file name', withFiles({ 'sub-01/a\u202egpj.exe': '' })],
    ['a line break in its name', said(DESCRIPTION, 'Name', 'a\nb')],
    ['NUL in its name', said(DESCRIPTION, 'Name', 'a\0b')],
    ['a turned name', said(DESCRIPTION, 'Name', 'a\u2067b')],
    ['a turned channel', channels(10, () => 'a\u202eb')],
    ['an escape in a model', said(SIDECAR, 'ManufacturersModelName', '\u001b[31m')],
  ])('refuses %s, and the refusal itself is one plain line', async (_what, files) => {
    const { message } = await refusalOf(zipped(files));
    expect(message).toMatch(/holds a line break or a character that cannot be seen$/);
    expect(message).not.toMatch(/[\p{Cc}\p{Bidi_Control}]/u);
  });

  it.each([
    { 'sub-01/x': 'a file', 'sub-01/x/y': 'below it' },
    { 'sub-01/X': 'a file', 'sub-01/x/y': 'below it' },
  ])('refuses a file where a folder should be: %o', async (more) => {
    const error = await refusalOf(zipped(withFiles(more)));
    expect(error).toMatchObject({ code: 'duplicate-name' });
    expect(error.message).toMatch(/^sub-01\/x: is a file and a folder in the zip$/i);
  });

  it('never says more in a refusal than a person reads', async () => {
    const unit = 'm'.repeat(100_000);
    const files = withFiles({ [CHANNELS]: text(CHANNELS).replace('rad/s', unit) });
    expect((await refusalOf(writeTree(files))).message.length).toBeLessThan(800);
  });
});

describe('the time that a recording takes to read', () => {
  it('is in step with the length of a cell: no number is read in two ways', () => {
    const cell = (digits: number) => (): unknown => numberIn(`${'1'.repeat(digits)}x`);
    const short = cpuMs(cell(50_000), 100);
    // a hundred times as often a tenth as long: quadratic would be ten times as much
    expect(cpuMs(cell(5_000_000), 1)).toBeLessThan(20 * short + 200);
  });
});
