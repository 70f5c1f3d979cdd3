import { createReadStream } from 'node:fs';
import { Readable } from 'node:stream';
import { anglesCsv } from '../sessions/export/anglesCsv.ts';
import { openSenseTable } from '../sessions/export/openSense.ts';
import { repetitionsCsv } from '../sessions/export/repetitionsCsv.ts';
import { type RecordedSession, openSession, requireCalibration } from '../sessions/openSession.ts';
import type { SessionStore } from '../sessions/store/store.ts';
import { inScratch } from './sessionsImport.ts';
import type { AnalysisResult } from '../analysis/result.ts';
import type { ExportFormat } from './sessionsContract.ts';

export interface Download {
  readonly type: string;
  readonly fileName: string;
  readonly body: Readable;
}

const TYPES: Readonly<Record<ExportFormat, readonly [type: string, ending: string]>> = {
  zip: ['application/zip', '.zip'],
  csv: ['text/csv; charset=utf-8', '-repetitions.csv'],
  angles: ['text/csv; charset=utf-8', '-angles.csv'],
  sto: ['text/plain; charset=utf-8', '.sto'],
};

/** A kept session as it is handed out. */
export interface Exported {
  readonly id: string;
  /** Its folder or zip. */
  readonly path: string;
  readonly zip: () => Promise<Readable>;
}

/** A session for other programs, as a stream. `analysis` is asked for the table of repetitions only. */
export async function download(
  { id, path, zip }: Exported,
  format: ExportFormat,
  analysis: () => Promise<AnalysisResult>,
): Promise<Download> {
  const [type, ending] = TYPES[format];
  const fileName = `stillcatch-${id}${ending}`;
  if (format === 'zip') return { type, fileName, body: await zip() };
  if (format === 'csv')
    return { type, fileName, body: Readable.from(repetitionsCsv(await analysis())) };
  const table = format === 'angles' ? anglesCsv : openSenseTable;
  return { type, fileName, body: await tableOf(path, table) };
}

/** Packed whole before the first byte goes out, so that a refusal can still be said. */
export function packedZip(store: SessionStore, id: string): Promise<Readable> {
  return new Promise((resolve, reject) => {
    const sent = inScratch(`${id}.zip`, async (path) => {
      await store.exportZip(id, path);
      const body = createReadStream(path);
      resolve(body);
      await new Promise<void>((done) => body.once('close', () => done()));
    });
    sent.catch(reject);
  });
}

async function tableOf(
  path: string,
  table: (session: RecordedSession) => AsyncGenerator<string>,
): Promise<Readable> {
  const session = await openSession(path);
  async function* rows() {
    try {
      yield* table(session);
    } finally {
      await session.close();
    }
  }
  try {
    requireCalibration(session);
  } catch (error) {
    await session.close();
    throw error;
  }
  return Readable.from(rows());
}
