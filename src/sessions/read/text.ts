import type { SessionFiles } from '../files/sessionFiles.ts';
import { SessionError } from '../sessionError.ts';

/** Small tables and kept results; a motion.tsv is never read this way. */
const MOST_BYTES = 4 * 2 ** 20;
/** Of a sidecar or a plan: hundreds of times what they have. A choice. */
const MOST_JSON_BYTES = 256 * 1024;

/** A small file as text: UTF-8, without byte order mark. */
export async function readText(
  files: SessionFiles,
  file: string,
  most = MOST_BYTES,
): Promise<string> {
  if (!files.names.includes(file)) throw new SessionError('missing-file', 'is missing', { file });
  if (files.size(file) > most)
    throw new SessionError('too-large', `has more than ${most / 1024} kB`, { file });
  const parts: Buffer[] = [];
  for await (const chunk of files.chunks(file)) parts.push(Buffer.from(chunk));
  const bytes = Buffer.concat(parts);
  if (bytes.includes(0)) throw new SessionError('binary', 'is not a text file', { file });
  return bytes.toString('utf8').replace(/^\uFEFF/, '');
}

export type JsonObject = Readonly<Record<string, unknown>>;

/** @param most bytes; where it is left out, those of a small file */
export async function readJson(
  files: SessionFiles,
  file: string,
  most = MOST_JSON_BYTES,
): Promise<JsonObject> {
  const text = await readText(files, file, most);
  const value = parse(text, file);
  if (typeof value === 'object' && value !== null && !Array.isArray(value))
    return value as JsonObject;
  throw new SessionError('bad-json', 'must hold one JSON object', { file });
}

function parse(text: string, file: string): unknown {
  if (text.trim() === '') throw new SessionError('bad-json', 'is empty', { file });
  try {
    return JSON.parse(text) as unknown;
  } catch (error) {
    throw new SessionError('bad-json', `is not JSON (${(error as Error).message})`, {
      file,
      ...placeOf(text, (error as Error).message),
    });
  }
}

/** Line and column out of the offset that V8 writes into its message. */
function placeOf(text: string, message: string): { line?: number; column?: number } {
  const offset = /at position (\d+)/.exec(message)?.[1];
  if (offset === undefined) return {};
  const before = text.slice(0, Number(offset)).split('\n');
  return { line: before.length, column: (before.at(-1)?.length ?? 0) + 1 };
}
