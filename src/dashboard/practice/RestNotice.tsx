import { isHalfDone } from '../../coaching/sessionCount.ts';
import { useSection } from '../feed/hooks.ts';
import { t } from '../strings/strings.ts';

/** At half of the session's goal, until the next repetition. */
export function RestNotice() {
  const ledger = useSection('ledger');
  if (ledger === null || !isHalfDone(ledger)) return null;
  return (
    <p class="notice" role="status" data-testid="rest">
      {t.count.rest}
    </p>
  );
}
