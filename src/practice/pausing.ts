import { REFUSALS } from './refusals.ts';
import { type Run, saidNow } from './run.ts';

/** Nothing is counted from now on, or again. @returns why not, in a sentence */
export function pauseOrResume<S>(run: Run<S>, type: 'pause' | 'resume'): string | null {
  if (run.draft.view.stage !== 'practice') return REFUSALS['no-practice'];
  run.options.source.ask?.(type === 'pause' ? 'rest' : 'practise');
  run.post({ type, value: null, onsetS: saidNow(run), durationS: 0 });
  return null;
}
