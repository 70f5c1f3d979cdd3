import type { Worker } from 'node:worker_threads';
import { type JobThread, jobThread } from '../../sessions/threads/jobThread.ts';
import { startThread } from '../../sessions/threads/startThread.ts';
import { failureOf } from './failure.ts';
import type { Job, JobAnswer } from './jobMessages.ts';

export type AnalysisThread = JobThread<Job, JobAnswer>;

/** Choices: the old for hours of samples; the young small, as a stream leaves much that is soon done with. */
const MEMORY = { maxOldGenerationSizeMb: 768, maxYoungGenerationSizeMb: 12 };

export const startAnalysis = (): Worker => startThread('worker', import.meta.url, MEMORY);

export const analysisThread = (start = startAnalysis): AnalysisThread =>
  jobThread({
    start,
    gone: (why) => failureOf(new Error(why)),
  });
