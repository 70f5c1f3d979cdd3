import type { Problem } from '../../coaching/jsonReader.ts';
import type { SpreadsView } from '../../streaming/sessionsContract.ts';
import { t } from '../strings/strings.ts';
import type { PlanDraft } from './draft.ts';

export interface PlanEditorProps {
  readonly draft: PlanDraft;
  readonly set: (draft: PlanDraft) => void;
  /** What is wrong, by path. */
  readonly problems: readonly Problem[];
  /** The student's own last values, beside the targets. */
  readonly last: SpreadsView;
}

export const problemAt = (problems: readonly Problem[], path: string): string | null =>
  problems
    .filter((p) => p.path === path || p.path.startsWith(`${path}[`))
    .map((p) => t.said.field(p))[0] ?? null;
