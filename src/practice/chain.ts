import type { AnalysisInput, AnalysisOutput, AnalysisSettings } from '../analysis/contract.ts';

/** The analysis as a practice runs it; `src/analysis/analysis.ts` is one. */
export interface AnalysisChain<State> {
  start(settings: AnalysisSettings): State;
  step(state: State, input: AnalysisInput, emit: (output: AnalysisOutput) => void): void;
  finish(state: State, emit: (output: AnalysisOutput) => void): void;
}
