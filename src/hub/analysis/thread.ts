import { type JobThread, jobThread } from '../../sessions/threads/jobThread.ts';
import { startThread } from '../../sessions/threads/startThread.ts';
import { sentence } from '../../streaming/apiErrors.ts';
import type { Job, JobAnswer } from './jobMessages.ts';

export type AnalysisThread = JobThread<Job, JobAnswer>;

const MEMORY_MB = 768;

export const analysisThread = (): AnalysisThread =>
  jobThread({
    start: () => startThread('worker', import.meta.url, { maxOldGenerationSizeMb: MEMORY_MB }),
    gone: (why) => ({ ok: false, problem: sentence(why), lasting: false }),
  });
