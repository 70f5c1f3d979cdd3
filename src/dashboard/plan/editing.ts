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

/** What is wrong with a field, or with a line of it, in a sentence with the label that stands beside it. */
export function problemAt(
  problems: readonly Problem[],
  path: string,
  label: string,
): string | null {
  const found = problems.find((p) => p.path === path || p.path.startsWith(`${path}[`));
  if (found === undefined) return null;
  const line = /\[(\d+)\]$/.exec(found.path)?.[1];
  const named = line === undefined ? label : t.said.lineOf(Number(line) + 1, label);
  return t.said.field(found, named);
}
