import { readFile } from 'node:fs/promises';
import type { AnalysisResult } from '../../analysis/result.ts';
import type { HubPlaces } from '../db/open.ts';
import { sessionPaths } from '../sessionPaths.ts';

/** The hub's own analysis of a session; `null` while it waits for it. */
export async function readResult(
  places: HubPlaces,
  studentId: string,
  sessionId: string,
): Promise<AnalysisResult | null> {
  const { analysis } = sessionPaths(places, studentId, sessionId);
  const text = await readFile(analysis, 'utf8').catch(() => null);
  return text === null ? null : (JSON.parse(text) as AnalysisResult);
}
