import type { RepetitionMoments } from '../../streaming/contract.ts';
import { PoseDrawing } from '../body/PoseDrawing.tsx';
import { caughtHands } from '../body/flight.ts';
import { useSection } from '../feed/hooks.ts';
import { t } from '../strings/strings.ts';

const MOMENTS = ['address', 'top', 'end'] as const;
const VIEWS = ['faceOn', 'downTheLine'] as const;

/** One repetition at address, top and catch, in both views side by side. */
export function Moments(props: {
  readonly title: string;
  /** Why this one. */
  readonly rule: string;
  readonly moments: RepetitionMoments;
}) {
  const { title, moments } = props;
  const leftHanded = useSection('hand') === 'left';
  const caught = caughtHands(moments.top, moments.end);
  return (
    <section class="moments">
      <h2>
        {title} <small>{t.after.repetition(moments.index)}</small>
      </h2>
      <p class="fine">{props.rule}</p>
      {VIEWS.map((view) => (
        <div key={view} class="moment-row">
          <p class="label">{t.body[view]}</p>
          {MOMENTS.map((moment) => (
            <figure key={moment}>
              <PoseDrawing
                view={view}
                pose={moments[moment]}
                ghost={moment === 'address' ? null : moments.address}
                leftHanded={leftHanded}
                {...(moment === 'end' && { hands: caught })}
                label={`${t.body[view]}, ${t.after.moments[moment]}`}
              />
              <figcaption>
                {t.after.moments[moment]}
                {moments[moment] === null && ` (${t.after.notSeen})`}
              </figcaption>
            </figure>
          ))}
        </div>
      ))}
    </section>
  );
}
