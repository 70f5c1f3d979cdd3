import { join } from 'node:path';
import { ANALYSIS, type AnalysisResult, type MadeBy } from '../analysis/result.ts';
import { DEFAULT_PLAN, type Plan } from '../coaching/plan.ts';
import { isAnalysisResult } from './analysisSchema.ts';
import type { SessionFiles } from './files/sessionFiles.ts';
import { planOf } from './planFile.ts';
import { readJson } from './read/text.ts';
import { VERSION } from './version.ts';
import { derivativesDescription } from './write/descriptors.ts';
import { countEvents } from './write/eventsFile.ts';
import { writeJson } from './write/wholeFile.ts';

export const DERIVATIVES = 'derivatives/stillcatch';
const PLAN = `${DERIVATIVES}/plan.json`;
const KEPT = `${DERIVATIVES}/analysis.json`;
/** Of a kept result: more than the longest practice has. */
const MOST_RESULT_BYTES = 4 * 2 ** 20;

/** Keeps the plan that a session was practised under beside it. */
export const writePlan = (session: string, plan: Plan): Promise<void> =>
  writeDerivative(session, PLAN, plan);

/** A cache: it may be deleted and is computed again. It says what made it, and how many events that knew. */
export async function writeAnalysis(session: string, analysis: AnalysisResult): Promise<void> {
  const madeBy: MadeBy = {
    version: VERSION,
    analysis: ANALYSIS,
    events: await countEvents(session),
  };
  await writeDerivative(session, KEPT, { ...analysis, madeBy });
}

/** Keeps something that was computed beside a session, with who computed it. @param name below the session */
export async function writeDerivative(
  session: string,
  name: string,
  value: unknown,
): Promise<void> {
  await writeJson(join(session, DERIVATIVES, 'dataset_description.json'), derivativesDescription);
  await writeJson(join(session, name), value);
}

/**
 * The session's own plan, or the default where it has none.
 * @throws SessionError where it has one that is broken.
 */
export async function readPlan(files: SessionFiles): Promise<Plan> {
  if (!files.names.includes(PLAN)) return DEFAULT_PLAN;
  return planOf(await readJson(files, PLAN), PLAN);
}

/** The kept result; `null` where there is none or one that this version does not read. */
export async function readAnalysis(files: SessionFiles): Promise<AnalysisResult | null> {
  if (!files.names.includes(KEPT)) return null;
  const value = await readJson(files, KEPT, MOST_RESULT_BYTES).catch(() => null);
  return isAnalysisResult(value) ? value : null;
}

/** Version that made the kept result, as its description says; `null` where it does not. */
export async function readVersion(files: SessionFiles): Promise<string | null> {
  const name = `${DERIVATIVES}/dataset_description.json`;
  if (!files.names.includes(name)) return null;
  const { GeneratedBy } = await readJson(files, name).catch(() => ({ GeneratedBy: null }));
  const [first] = (Array.isArray(GeneratedBy) ? GeneratedBy : []) as { Version?: unknown }[];
  return typeof first?.Version === 'string' ? first.Version.slice(0, 40) : null;
}
