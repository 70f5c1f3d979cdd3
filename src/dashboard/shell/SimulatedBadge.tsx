import { useSection } from '../feed/hooks.ts';
import { t } from '../strings/strings.ts';

/** Said wherever numbers do not come from a live body. */
export function SimulatedBadge() {
  const source = useSection('source');
  const idle = useSection('stage') === 'idle';
  const replay = source?.kind === 'replay';
  if (source === null || idle || !(source.simulated || replay)) return null;
  return (
    <span
      class="badge"
      data-testid="simulated"
      title={replay ? t.source.replayWhy : t.source.simulatedWhy}
    >
      {replay ? t.source.replay : t.source.synthetic}
    </span>
  );
}
