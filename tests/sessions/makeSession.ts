import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { onTestFinished } from 'vitest';
import type { AnalysisInput } from '../../src/analysis/contract.ts';
import { openSession } from '../../src/sessions/openSession.ts';
import type { SessionError } from '../../src/sessions/sessionError.ts';

/** A folder that is gone after the test. */
export function scratch(): string {
  const folder = mkdtempSync(join(tmpdir(), 'stillcatch-test-'));
  onTestFinished(() => rmSync(folder, { recursive: true, force: true }));
  return folder;
}

export const STEM = 'sub-01/ses-1/motion/sub-01_ses-1_task-holdReleaseCatch';
export const MOTION = `${STEM}_tracksys-chest_motion.tsv`;
export const CHANNELS = `${STEM}_tracksys-chest_channels.tsv`;

const channelRows = [
  'time\tn/a\tLATENCY\tp\ts\tx',
  ...['x', 'y', 'z'].map((k) => `acc_${k}\t${k}\tACCEL\tp\tm/s^2\tx`),
  ...['x', 'y', 'z'].map((k) => `gyro_${k}\t${k}\tGYRO\tp\trad/s\tx`),
  'device_time\tn/a\tMISC\tp\ts\tx',
  'arrival_time\tn/a\tMISC\tp\ts\tx',
];

/** Rows of a sensor that lies still with its z axis up. */
export function restRows(count = 300, hz = 100): string[][] {
  return Array.from({ length: count }, (_, k) => {
    const t = (k / hz).toFixed(6);
    const wobble = ((k % 7) - 3) * 0.004;
    return [
      t,
      wobble.toFixed(5),
      '0.01000',
      (9.81 + wobble).toFixed(5),
      '0.001000',
      '-0.002000',
      '0.000500',
      t,
      t,
    ];
  });
}

export const tsv = (rows: readonly (readonly string[])[]): string =>
  rows.map((row) => `${row.join('\t')}\n`).join('');

export type FileTree = Record<string, string | Buffer>;

/** The text of every file of a small sound session, written by hand from the description of the format. */
export function soundFiles(): FileTree {
  const files: FileTree = {
    'dataset_description.json': '{"Name":"Test","BIDSVersion":"1.9.0"}',
    README: 'A test.\n',
    'participants.tsv': 'participant_id\thandedness\nsub-01\tright\n',
    'sub-01/ses-1/sub-01_ses-1_scans.tsv': `filename\tacq_time\nmotion/a_motion.tsv\t2026-03-01T10:00:00\n`,
    [`${STEM}_events.tsv`]:
      'onset\tduration\ttrial_type\tvalue\n0.5\t1\tcalibration-stand\tn/a\n1.6\t0.2\tcalibration-bow\tn/a\n1.9\t0.1\tcalibration-armRaise\tn/a\n2.1\t0.1\taddress-reference\tn/a\n',
  };
  for (const role of ['chest', 'trailArm']) {
    files[`${STEM}_tracksys-${role}_motion.tsv`] = tsv(restRows());
    files[`${STEM}_tracksys-${role}_motion.json`] = JSON.stringify({
      TaskName: 'holdReleaseCatch',
      SamplingFrequency: 100,
      TrackingSystemName: role,
    });
    files[`${STEM}_tracksys-${role}_channels.tsv`] = [
      'name\tcomponent\ttype\ttracked_point\tunits\tplacement',
      ...channelRows,
      '',
    ].join('\n');
  }
  return files;
}

export function writeTree(files: FileTree, folder = scratch()): string {
  for (const [name, content] of Object.entries(files)) {
    mkdirSync(dirname(join(folder, name)), { recursive: true });
    writeFileSync(join(folder, name), content);
  }
  return folder;
}

export async function readAll(
  path: string,
): Promise<{ inputs: AnalysisInput[]; notes: readonly string[] }> {
  const session = await openSession(path);
  try {
    const inputs: AnalysisInput[] = [];
    for await (const batch of session.inputs()) inputs.push(...batch);
    return { inputs, notes: session.notes() };
  } finally {
    await session.close();
  }
}

/** The error with which opening or reading to the end is refused. */
export async function refusalOf(path: string): Promise<SessionError> {
  try {
    await readAll(path);
  } catch (error) {
    return error as SessionError;
  }
  throw new Error('was not refused');
}
