import { useState } from 'preact/hooks';
import { FigureLegend } from '../body/FigureLegend.tsx';
import { PoseDrawing } from '../body/PoseDrawing.tsx';
import { lessMotion } from '../review/repetition/usePlay.ts';
import { t } from '../strings/strings.ts';
import { DrillFigures } from './DrillFigures.tsx';
import { OwnBestFigures } from './OwnBest.tsx';
import { STEPS, STEP_AT, drillAt, stepAt } from './model.ts';
import { useLoop } from './useLoop.ts';

const words = t.figure.drill;

function Stills({ leftHanded }: { readonly leftHanded: boolean }) {
  return (
    <ol class="drill-stills plain">
      {STEPS.map((step) => (
        <li key={step}>
          <PoseDrawing
            view="faceOn"
            {...drillAt(STEP_AT[step])}
            leftHanded={leftHanded}
            label={words.says[step]}
          />
          <b>{words.step[step]}</b> {words.says[step]}
        </li>
      ))}
    </ol>
  );
}

function Moving({ leftHanded, own }: { readonly leftHanded: boolean; readonly own: boolean }) {
  const { timeS, playing, toggle } = useLoop(true);
  const now = stepAt(timeS);
  return (
    <>
      <div class="row">
        <button type="button" aria-pressed={playing} onClick={toggle}>
          {playing ? words.pause : words.play}
        </button>
        <ol class="drill-steps plain">
          {STEPS.map((step) => (
            <li key={step} class={step === now ? 'step-now' : ''}>
              {words.step[step]}
            </li>
          ))}
        </ol>
      </div>
      <p class="drill-says">{words.says[now]}</p>
      <div class={own ? 'drill-pair' : ''}>
        <section aria-label={words.title}>
          {own && <h3>{words.drawn}</h3>}
          <DrillFigures timeS={timeS} leftHanded={leftHanded} />
        </section>
        {own && <OwnBestFigures drillS={timeS} />}
      </div>
    </>
  );
}

/** The drill as a short loop of our own, or as four pictures where motion is to be reduced. */
export function Drill(props: {
  readonly leftHanded: boolean;
  /** The student's own best repetition beside it, in step. */
  readonly own?: boolean;
}) {
  const { leftHanded, own = false } = props;
  const still = lessMotion();
  return (
    <div class="drill" data-testid="drill">
      {still ? <Stills leftHanded={leftHanded} /> : <Moving leftHanded={leftHanded} own={own} />}
      {still && own && <OwnBestFigures drillS={STEP_AT.catch} />}
      <p class="fine">
        {words.notMeasured} {!still && words.slow}
      </p>
      {own && <FigureLegend ghost={null} />}
    </div>
  );
}

/** The drill on demand; nothing is loaded or moves before. */
export function DrillOnDemand(props: { readonly leftHanded: boolean; readonly own?: boolean }) {
  const [open, setOpen] = useState(false);
  return (
    <details class="drill-demand" onToggle={(event) => setOpen(event.currentTarget.open)}>
      <summary>{words.show}</summary>
      {open && <Drill {...props} />}
    </details>
  );
}
