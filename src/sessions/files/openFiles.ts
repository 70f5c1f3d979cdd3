import { stat } from 'node:fs/promises';
import { SessionError } from '../sessionError.ts';
import { openFolder } from './folder.ts';
import { LIMITS, type Limits, type SessionFiles } from './sessionFiles.ts';
import { openZip } from './zip.ts';

/** The files of a session folder or a session zip, with the one wrapping folder taken off where there is one. */
export async function openFiles(path: string, limits: Limits = LIMITS): Promise<SessionFiles> {
  const info = await stat(path).catch(() => null);
  if (info === null) throw new SessionError('not-found', `no file or folder named ${path}`);
  if (!info.isDirectory() && !info.isFile())
    throw new SessionError('not-a-session', 'neither a folder nor a file');
  if (info.isFile() && info.size === 0) throw new SessionError('not-a-zip', 'the file is empty');
  const files = await (info.isDirectory() ? openFolder : openZip)(path, limits);
  const root = rootOf(files.names);
  if (root !== null) return root === '' ? files : below(files, root);
  await files.close();
  throw new SessionError(
    'not-a-session',
    'no session in it: expected participants.tsv and a sub-... folder at the top or in one single folder',
  );
}

/** Prefix of the dataset: '' where it starts at the top, `folder/` where it is wrapped, `null` where there is none. */
function rootOf(names: readonly string[]): string | null {
  if (names.some(isTop)) return '';
  const folders = new Set(
    names
      .filter(
        (name) => name.includes('/') && !name.startsWith('__MACOSX/') && !name.startsWith('.'),
      )
      .map((name) => name.slice(0, name.indexOf('/') + 1)),
  );
  const [only] = folders;
  if (folders.size !== 1 || only === undefined) return null;
  return names.some((name) => name.startsWith(only) && isTop(name.slice(only.length)))
    ? only
    : null;
}

const isTop = (name: string): boolean =>
  name === 'participants.tsv' || name === 'dataset_description.json' || /^sub-[^/]*\//.test(name);

function below(files: SessionFiles, root: string): SessionFiles {
  return {
    label: files.label,
    names: files.names.filter((n) => n.startsWith(root)).map((n) => n.slice(root.length)),
    size: (name) => files.size(root + name),
    chunks: (name) => files.chunks(root + name),
    close: () => files.close(),
  };
}
