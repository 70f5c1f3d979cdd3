import type { AnalysisInput, AnalysisOutput, AnalysisSettings } from '../analysis/contract.ts';
import type { AnalysisResult } from '../analysis/result.ts';
import type { Plan } from '../coaching/plan.ts';

/** The analysis as a practice runs it; `src/analysis/analysis.ts` is one. */
export interface AnalysisChain<State> {
  start(settings: AnalysisSettings): State;
  step(state: State, input: AnalysisInput, emit: (output: AnalysisOutput) => void): void;
  /** From now on by another plan. */
  replan?(state: State, plan: Plan): void;
  finish(state: State, emit: (output: AnalysisOutput) => void): void;
  /** The session's result as it stands. */
  result?(state: State, sessionId: string): AnalysisResult;
}
