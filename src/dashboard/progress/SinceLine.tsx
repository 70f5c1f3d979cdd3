import { type SinceLast, sinceLast } from '../../coaching/sinceLast.ts';
import { t } from '../strings/strings.ts';
import type { Step } from './course.ts';

const words = t.today.since;

/** The sentence on what changed most, or that nothing certain can be said. */
export function sinceText(since: SinceLast): string {
  if (since.kind !== 'changed') return words[since.kind];
  const { measure, toward } = since;
  const { before, now, difference, plusMinus } = t.measures.change(since);
  const text = words.changed(t.measures.info[measure].name, now, before, difference, plusMinus);
  return toward === null ? `${text}.` : `${text}, ${words.toward[toward]}.`;
}

/** The newest session beside the one before it, where there is one. */
export function SinceLine({ steps }: { readonly steps: readonly Step[] }) {
  const since = sinceLast(steps.map((step) => ({ ...step, startedMs: step.atMs })));
  if (since === null || since.kind === 'first') return null;
  return (
    <p class="since-line">
      <b>{words.title}:</b> {sinceText(since)}
    </p>
  );
}
