import { type Imported, MAX_IMPORT_BYTES } from '../../streaming/sessionsContract.ts';
import { t } from '../strings/strings.ts';
import { ask } from './api.ts';

const words = t.sessions;

/** What can be refused without sending it; `null` where nothing. */
export function refusalOf({ name, size }: Pick<File, 'name' | 'size'>): string | null {
  if (!/\.zip$/i.test(name)) return words.notZip(name);
  if (size === 0) return words.emptyFile(name);
  return size > MAX_IMPORT_BYTES ? words.tooLarge(name, MAX_IMPORT_BYTES / 1024 / 1024) : null;
}

export interface ImportResult {
  readonly imported: number;
  /** One sentence a file that was not taken. */
  readonly refused: readonly string[];
}

/** Sends the files one after the other; one that is refused does not stop the others. */
export async function importFiles(files: readonly File[]): Promise<ImportResult> {
  const refused: string[] = [];
  for (const file of files) {
    const refusal = refusalOf(file) ?? (await send(file));
    if (refusal !== null) refused.push(refusal);
  }
  return { imported: files.length - refused.length, refused };
}

const send = (file: File): Promise<string | null> =>
  ask<Imported>('import', {
    method: 'POST',
    body: file,
    headers: { 'content-type': 'application/zip' },
  }).then(
    () => null,
    (error: Error) => words.refused(file.name, error.message),
  );
