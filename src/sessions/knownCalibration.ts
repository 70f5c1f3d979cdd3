import { join } from 'node:path';
import Type, { type Static } from 'typebox';
import Compile from 'typebox/compile';
import type { KnownFits } from '../body/recheck.ts';
import type { SessionFiles } from './files/sessionFiles.ts';
import { readJson } from './read/text.ts';
import { SessionError } from './sessionError.ts';
import { writeJson } from './write/wholeFile.ts';

const number = Type.Number({ minimum: -1000, maximum: 1000 });
const vec = Type.Object({ x: number, y: number, z: number });
const fit = Type.Object({ stands: Type.Array(vec, { minItems: 1, maxItems: 4 }), right: vec });

/** What both sensors' mountings follow from, as it is kept in files. */
export const FITS = Type.Object({ chest: fit, trailArm: fit });

const schema = Type.Object({ schema: Type.Literal(1), fits: FITS });
const validator = Compile(schema);

/** Source data, not a derivative: without it a re-checked session cannot be analysed again. */
const FILE = 'sourcedata/calibration.json';

export function writeKnown(session: string, fits: KnownFits): Promise<void> {
  const value: Static<typeof schema> = {
    schema: 1,
    fits: {
      chest: { ...fits.chest, stands: [...fits.chest.stands] },
      trailArm: { ...fits.trailArm, stands: [...fits.trailArm.stands] },
    },
  };
  return writeJson(join(session, FILE), value);
}

/** @throws SessionError where there is one that is broken. */
export async function readKnown(files: SessionFiles): Promise<KnownFits | null> {
  if (!files.names.includes(FILE)) return null;
  const value: unknown = await readJson(files, FILE);
  if (validator.Check(value)) return value.fits;
  const [first] = validator.Errors(value);
  const what = `the saved calibration is damaged at ${first?.instancePath || 'its start'}: ${first?.message ?? 'wrong content'}`;
  throw new SessionError('bad-field', what, { file: FILE });
}
