import { mkdirSync, readFileSync, renameSync, writeFileSync } from 'node:fs';
import { dirname } from 'node:path';
import Type from 'typebox';
import Compile from 'typebox/compile';
import { STOP_IDS } from '../practice/stops.ts';
import { LONGEST_NOTE } from '../sessions/practiceNotes.ts';
import { FITS } from '../sessions/knownCalibration.ts';
import { LONGEST_NAME } from '../practice/about.ts';
import { MOST_SESSIONS, NOBODY, type Person } from '../practice/person.ts';

const degrees = Type.Optional(Type.Number({ minimum: 0, maximum: 180 }));
const pain = Type.Integer({ minimum: 0, maximum: 10 });

const schema = Type.Object({
  schema: Type.Literal(1),
  historyConfirmed: Type.Boolean(),
  about: Type.Optional(
    Type.Object({
      hand: Type.Optional(Type.Union([Type.Literal('left'), Type.Literal('right')])),
      name: Type.Optional(Type.String({ maxLength: 2 * LONGEST_NAME })),
    }),
  ),
  ownRange: Type.Object({
    externalRotationDeg: degrees,
    flexionDeg: degrees,
    lateralTrailDeg: degrees,
    lateralLeadDeg: degrees,
  }),
  stop: Type.Optional(
    Type.Object({
      id: Type.Union(STOP_IDS.map((id) => Type.Literal(id))),
      atMs: Type.Number({ minimum: 0 }),
      read: Type.Boolean(),
    }),
  ),
  calibration: Type.Optional(
    Type.Object({
      madeMs: Type.Number({ minimum: 0 }),
      hand: Type.Union([Type.Literal('left'), Type.Literal('right')]),
      sensors: Type.Object({
        kind: Type.Union([Type.Literal('synthetic'), Type.Literal('replay'), Type.Literal('ble')]),
        chest: Type.String({ maxLength: 200 }),
        trailArm: Type.String({ maxLength: 200 }),
      }),
      fits: FITS,
    }),
  ),
  sessions: Type.Array(
    Type.Object({
      sessionId: Type.Optional(Type.String({ maxLength: 64 })),
      startedMs: Type.Number({ minimum: 0 }),
      repetitions: Type.Integer({ minimum: 0 }),
      painBefore: pain,
      painAfter: Type.Union([pain, Type.Null()]),
      note: Type.String({ maxLength: LONGEST_NOTE }),
    }),
    { maxItems: MOST_SESSIONS },
  ),
});

const validator = Compile(schema);

/** Where a student's own facts are kept between sessions. */
export interface PersonStore {
  read(): Person;
  write(person: Person): void;
}

const isMissing = (error: unknown): boolean =>
  error instanceof Error && 'code' in error && error.code === 'ENOENT';

/**
 * One JSON file, replaced as a whole.
 * @throws Error in words where the file is there and cannot be understood: nothing is overwritten then.
 */
export function personFile(path: string, complain: (sentence: string) => void): PersonStore {
  let person = load(path);
  return {
    read: () => person,
    write: (next) => {
      person = next;
      try {
        mkdirSync(dirname(path), { recursive: true });
        writeFileSync(`${path}.new`, `${JSON.stringify(next, null, 2)}\n`);
        renameSync(`${path}.new`, path);
      } catch (error) {
        complain(
          `${path} could not be written: ${String(error)}. The practice continues without it.`,
        );
      }
    },
  };
}

function load(path: string): Person {
  let text: string;
  try {
    text = readFileSync(path, 'utf8');
  } catch (error) {
    if (isMissing(error)) return NOBODY;
    throw new Error(`${path} cannot be read: ${String(error)}`);
  }
  let value: unknown;
  try {
    value = JSON.parse(text);
  } catch {
    throw new Error(`${path} is not JSON. Move it away or mend it, then start again.`);
  }
  if (!validator.Check(value)) {
    const [first] = validator.Errors(value);
    throw new Error(
      `${path} is damaged at ${first?.instancePath || 'its start'}: ${first?.message ?? 'wrong content'}. Move it away or mend it, then start again.`,
    );
  }
  return value as Person;
}
