import type { ComponentChildren } from 'preact';
import { useMemo } from 'preact/hooks';
import type { JudgedRepetition } from '../../../coaching/judgement.ts';
import type { RepetitionCurves } from '../../../streaming/sessionsContract.ts';
import { DrillFigures } from '../../drill/DrillFigures.tsx';
import { drillMoment } from '../../drill/inStep.ts';
import { t } from '../../strings/strings.ts';
import { CurvesPlot } from './CurvesPlot.tsx';
import { Figures } from './Figures.tsx';
import { Scrubber } from './Scrubber.tsx';
import type { Aligned } from './curveLines.ts';
import { alignOf, eventsOf } from './events.ts';
import { flightIn } from './flightIn.ts';
import { poseAt } from './poseAt.ts';
import { usePlay } from './usePlay.ts';

const words = t.review;

export interface Beside {
  readonly repetition: JudgedRepetition;
  readonly curves: RepetitionCurves;
}

const aligned = (r: JudgedRepetition, curves: RepetitionCurves): Aligned => ({
  curves,
  alignS: alignOf(r),
});

function ghostOf(beside: Beside | null, curves: RepetitionCurves, offsetS: number) {
  if (beside === null)
    return {
      ghost: curves.address,
      ghostIs:
        curves.address === null
          ? words.repetition.noGhost.replace(/\.$/, '')
          : words.repetition.ghost,
    };
  const { repetition, curves: others } = beside;
  return {
    ghost: poseAt(others.poses, alignOf(repetition) + offsetS),
    ghostIs: words.compare.bodies(repetition.index),
  };
}

/** Curves, scrubber and both body views, tied by one cursor: parts of the grid `moment`. */
export function Moment(props: {
  readonly repetition: JudgedRepetition;
  readonly curves: RepetitionCurves;
  readonly beside: Beside | null;
  readonly leftHanded: boolean;
  /** Session s. */
  readonly cursorS: number;
  readonly setCursorS: (sessionS: number) => void;
  /** A film of the moment, beside the curves. */
  readonly film?: ComponentChildren;
}) {
  const { repetition: r, curves, beside, cursorS, setCursorS } = props;
  const alignS = alignOf(r);
  const events = useMemo(() => eventsOf(r), [r]);
  const [fromS, toS] = [curves.timeS[0] ?? alignS, curves.timeS.at(-1) ?? alignS];
  const move = (sessionS: number): void => setCursorS(Math.min(toS, Math.max(fromS, sessionS)));
  const flight = useMemo(() => flightIn(r, curves), [r, curves]);
  const play = usePlay({ fromS, toS }, events, cursorS, move);
  if (curves.timeS.length === 0) return <p class="empty moment-curves">{words.repetition.empty}</p>;
  return (
    <>
      <div class="moment-scrub">
        <Scrubber
          {...{ fromS, toS, alignS, cursorS, events, play }}
          from={words.repetition.from[r.kind]}
          setCursorS={move}
        />
      </div>
      {props.film && <div class="moment-film">{props.film}</div>}
      <section class="moment-curves" aria-label={words.repetition.curves}>
        {beside !== null && (
          <p class="fine">
            {words.compare.legend(r.index, beside.repetition.index)} {words.compare.aligned}
          </p>
        )}
        <CurvesPlot
          all={[
            aligned(r, curves),
            ...(beside === null ? [] : [aligned(beside.repetition, beside.curves)]),
          ]}
          events={events}
          cursorS={cursorS}
          setCursorS={move}
        />
      </section>
      <div class="moment-body">
        <Figures
          poses={curves.poses}
          cursorS={cursorS}
          leftHanded={props.leftHanded}
          address={curves.address}
          flight={flight}
          {...ghostOf(beside, curves, cursorS - alignS)}
        />
        {r.kind === 'rehearsal' && (
          <details class="drill-demand">
            <summary>{t.figure.drill.beside}</summary>
            <DrillFigures timeS={drillMoment(r, cursorS)} leftHanded={props.leftHanded} />
            <p class="fine">
              {t.figure.drill.notMeasured} {t.figure.drill.inStep}
            </p>
          </details>
        )}
      </div>
    </>
  );
}
