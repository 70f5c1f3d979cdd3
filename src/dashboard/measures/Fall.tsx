import type { JudgedRepetition } from '../../coaching/judgement.ts';
import { usePrefs } from '../shell/prefs.ts';
import { t } from '../strings/strings.ts';

/** How far the club fell, in the unit chosen under More; nothing where it was not taken. */
export function Fall({ repetition }: { readonly repetition: JudgedRepetition }) {
  const { fallUnit } = usePrefs();
  const { fallCm } = repetition.measures;
  if (fallCm === null) return null;
  const measured = repetition.flags.includes('release-measured');
  return (
    <p class="fine" data-fall>
      {t.measures.fall(fallCm, fallUnit, measured)}
    </p>
  );
}
