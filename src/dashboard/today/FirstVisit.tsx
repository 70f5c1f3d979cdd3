import { useState } from 'preact/hooks';
import { Drill } from '../drill/Drill.tsx';
import { useSection } from '../feed/hooks.ts';
import { sided } from '../strings/sided.ts';
import { t } from '../strings/strings.ts';

/** What the rehearsal is, drawn, and what is needed for it. */
export function FirstVisit({ open }: { readonly open: boolean }) {
  const hand = useSection('hand');
  const practised = (useSection('person')?.lastSession ?? null) !== null;
  const [shown, setShown] = useState(open);
  return (
    <details
      class="first-visit"
      open={open}
      onToggle={(event) => setShown(event.currentTarget.open)}
    >
      <summary>{t.today.firstTitle}</summary>
      {shown && <Drill own={practised} leftHanded={hand === 'left'} />}
      <h2>{t.today.needTitle}</h2>
      <ul class="need">
        {t.today.need.map((item) => (
          <li key={item}>{sided(item, hand)}</li>
        ))}
      </ul>
    </details>
  );
}
