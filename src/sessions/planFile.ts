import { readFile } from 'node:fs/promises';
import type { Plan } from '../coaching/plan.ts';
import { validatePlan } from '../coaching/validatePlan.ts';
import { SessionError } from './sessionError.ts';

const MOST_BYTES = 1e6;

/**
 * A plan out of a JSON file; missing fields take their defaults.
 * @throws SessionError that names every field which is unknown or wrong.
 */
export async function readPlanFile(path: string): Promise<Plan> {
  const text = await readFile(path, 'utf8').catch((error: unknown) => {
    const { code } = error as NodeJS.ErrnoException;
    const what = code === 'ENOENT' ? 'plan file not found' : 'the plan cannot be read';
    throw new SessionError('not-found', what, { file: path });
  });
  if (text.length > MOST_BYTES)
    throw new SessionError('too-large', 'far too large for a plan', { file: path });
  return planOf(parse(text, path), path);
}

function parse(text: string, file: string): unknown {
  try {
    return JSON.parse(text.replace(/^\uFEFF/, '')) as unknown;
  } catch (error) {
    throw new SessionError('bad-json', `is not JSON (${(error as Error).message})`, { file });
  }
}

/** @throws SessionError where `value` is no plan; `file` names its place. */
export function planOf(value: unknown, file: string): Plan {
  const { plan, problems } = validatePlan(value);
  if (plan !== undefined) return plan;
  const words = problems.map((p) => p.message).join(' ');
  throw new SessionError('bad-field', `is not a plan: ${words}`, { file });
}
