import {
  PAIN_SIGNS,
  SESSION_EVENT_TYPES,
  type SessionEvent,
  type SessionEventType,
} from '../../sensors/sessionEvent.ts';
import type { SessionFiles } from '../files/sessionFiles.ts';
import { eventEndS } from '../../sensors/recorded.ts';
import { SessionError } from '../sessionError.ts';
import { type Row, type Table, cellPlace, columnOf, numberAt, readTable } from './table.ts';

/** Ten a second for hours; a practice has hundreds. A choice. */
const MOST_EVENTS = 100_000;
/** Each looks at up to a minute of samples; a practice has ten or twenty. A choice. */
const MOST_STEPS = 200;

/** Events in the order in which they are over; other trial types than ours are left out. */
export async function readEvents(
  files: SessionFiles,
  file: string,
): Promise<readonly SessionEvent[]> {
  if (!files.names.includes(file)) return [];
  const table = await readTable(files, file, { tornEnd: true, most: MOST_EVENTS, called: 'event' });
  const columns = {
    onset: columnOf(table, 'onset'),
    duration: columnOf(table, 'duration'),
    type: columnOf(table, 'trial_type'),
    value: table.columns.indexOf('value'),
    signs: table.columns.indexOf('signs'),
  };
  const events = table.rows.flatMap((row) => eventOf(table, row, columns));
  refuseManySteps(events, file);
  return events
    .map((event) => ({ event, endS: eventEndS(event) }))
    .sort((a, b) => a.endS - b.endS)
    .map(({ event }) => event);
}

function refuseManySteps(events: readonly SessionEvent[], file: string): void {
  const steps = events.filter(({ type }) => /^(calibration|recheck|address)-/.test(type)).length;
  if (steps > MOST_STEPS)
    throw new SessionError('too-many', `${steps} calibration steps; at most ${MOST_STEPS}`, {
      file,
    });
}

interface EventColumns {
  readonly onset: number;
  readonly duration: number;
  readonly type: number;
  readonly value: number;
  readonly signs: number;
}

function eventOf(table: Table, row: Row, columns: EventColumns): SessionEvent[] {
  const type = row.cells[columns.type] as SessionEventType;
  if (!SESSION_EVENT_TYPES.includes(type)) return [];
  const onsetS = numberAt(table, row, columns.onset);
  const durationS = numberAt(table, row, columns.duration) ?? 0;
  const refuse = (what: string, column: number): never => {
    throw new SessionError('bad-field', what, cellPlace(table, row, column));
  };
  if (onsetS === null) return refuse('an event needs an onset', columns.onset);
  if (durationS < 0) return refuse('a duration cannot be negative', columns.duration);
  if (type !== 'pain') return [{ type, onsetS, durationS, value: null }];
  const value = columns.value < 0 ? null : numberAt(table, row, columns.value);
  if (value !== null && (value < 0 || value > 10))
    return refuse('pain is rated from 0 to 10', columns.value);
  const told = (row.cells[columns.signs] ?? '').split(',').map((sign) => sign.trim());
  const signs = PAIN_SIGNS.filter((sign) => told.includes(sign));
  return [{ type, onsetS, durationS, value, ...(signs.length > 0 && { signs }) }];
}
