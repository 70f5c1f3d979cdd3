import type { SensorRole } from '../../sensors/sample.ts';
import { checkWord } from '../files/names.ts';
import type { SessionFiles } from '../files/sessionFiles.ts';
import { type SessionHeader, type SessionTracks, type TrackHeader, sessionId } from '../header.ts';
import { SessionError } from '../sessionError.ts';
import type { Layout } from './layout.ts';
import { cellPlace, columnOf, readTable } from './table.ts';
import { type JsonObject, readJson } from './text.ts';

/** All that is said about the session outside its tracks. */
export async function readHeader(
  files: SessionFiles,
  layout: Layout,
  tracks: ReadonlyMap<SensorRole, TrackHeader>,
): Promise<SessionHeader> {
  const description = await describe(files);
  return {
    id: sessionId(layout.subject, layout.session),
    subject: layout.subject,
    session: layout.session,
    task: layout.task,
    hand: await readHand(files, layout.subject),
    startedAt: await readStart(files, layout),
    simulated: isSimulated(description),
    name: nameIn(description),
    tracks: Object.fromEntries(tracks) as unknown as SessionTracks,
  };
}

const DESCRIPTION = 'dataset_description.json';

const describe = (files: SessionFiles): Promise<JsonObject> =>
  files.names.includes(DESCRIPTION) ? readJson(files, DESCRIPTION) : Promise.resolve({});

const nameIn = ({ Name: name }: JsonObject): string =>
  typeof name === 'string' ? checkWord(name, 'the name', DESCRIPTION) : '';

const isSimulated = ({ Keywords: words }: JsonObject): boolean =>
  Array.isArray(words) && words.includes('simulated');

/** Spellings of BIDS. */
const HANDS: Readonly<Record<string, 'left' | 'right'>> = {
  left: 'left',
  l: 'left',
  right: 'right',
  r: 'right',
};

async function readHand(files: SessionFiles, subject: string): Promise<'left' | 'right'> {
  const table = await readTable(files, 'participants.tsv');
  const idColumn = columnOf(table, 'participant_id');
  const handColumn = columnOf(table, 'handedness');
  const row = table.rows.find((r) => r.cells[idColumn]?.replace(/^sub-/, '') === subject);
  if (row === undefined)
    throw new SessionError('hand-unknown', `no row for sub-${subject}`, { file: table.file });
  const stated = row.cells[handColumn] ?? '';
  const hand = HANDS[stated.toLowerCase()];
  if (hand !== undefined) return hand;
  throw new SessionError(
    'hand-unknown',
    `handedness is "${stated}"; it must be left or right (the golfer's hand)`,
    cellPlace(table, row, handColumn),
  );
}

/** acq_time of the first track that has one; the file is optional in BIDS. */
async function readStart(files: SessionFiles, layout: Layout): Promise<string | null> {
  if (!files.names.includes(layout.scans)) return null;
  const table = await readTable(files, layout.scans, { tornEnd: true });
  const column = table.columns.indexOf('acq_time');
  if (column < 0) return null;
  const times = table.rows.map((row) => row.cells[column] ?? '');
  return times.find((time) => /^\d{4}-\d\d-\d\dT\d\d:\d\d:\d\d[\d.Z:+-]{0,30}$/.test(time)) ?? null;
}
