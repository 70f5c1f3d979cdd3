import type { RefObject } from 'preact';
import { useState } from 'preact/hooks';
import type { JudgedRepetition } from '../../../coaching/judgement.ts';
import type { Clip } from '../../../streaming/hubContract/review.ts';
import { h } from '../../strings/hub.ts';
import { WIDE_SPREAD_MS, lineUp, pairsOf } from './lineUp.ts';

const words = h.session.clips.lineUp;
const MARKS = 3;

interface Props {
  readonly clip: Clip;
  readonly r: JudgedRepetition;
  readonly video: RefObject<HTMLVideoElement | null>;
  readonly cursorS: number;
  readonly setStart: (startS: number | null) => void;
}

/** What is seen in a film as well as in the curves: the catch of a rehearsal, the impact of a ball. */
function momentOf(r: JudgedRepetition): number | null {
  if (r.kind === 'rehearsal') return r.catchS;
  return r.kind === 'ball' ? r.impactS : null;
}

function ByOne({ r, video, setStart }: Props) {
  const sessionS = momentOf(r);
  if (sessionS === null) return <p class="fine">{words.notSeen}</p>;
  const use = (): void => {
    const startS = lineUp([{ clipS: video.current?.currentTime ?? 0, sessionS }])?.startS;
    if (startS !== undefined) setStart(startS);
  };
  const ball = r.kind === 'ball';
  return (
    <div class="line-up-way">
      <h4>{words.oneTitle}</h4>
      <p>{ball ? words.oneImpact : words.oneCatch}</p>
      <button type="button" onClick={use}>
        {ball ? words.isImpact : words.isCatch}
      </button>
    </div>
  );
}

function ByThree({ video, cursorS, setStart }: Props) {
  const [film, setFilm] = useState<readonly number[]>([]);
  const [curves, setCurves] = useState<readonly number[]>([]);
  const complete = film.length === MARKS && curves.length === MARKS;
  const found = complete ? lineUp(pairsOf(film, curves)) : null;
  const spread = found === null ? 0 : Math.round(found.spreadMs);
  const restart = (): void => {
    setFilm([]);
    setCurves([]);
  };
  return (
    <div class="line-up-way">
      <h4>{words.threeTitle}</h4>
      <p>{words.three}</p>
      <div class="row">
        <button
          type="button"
          disabled={film.length === MARKS}
          onClick={() => setFilm([...film, video.current?.currentTime ?? 0])}
        >
          {words.inFilm(film.length)}
        </button>
        <button
          type="button"
          disabled={curves.length === MARKS}
          onClick={() => setCurves([...curves, cursorS])}
        >
          {words.inCurves(curves.length)}
        </button>
        <button
          type="button"
          disabled={found === null}
          onClick={() => found !== null && setStart(found.startS)}
        >
          {words.use}
        </button>
        <button type="button" class="quiet" onClick={restart}>
          {words.again}
        </button>
      </div>
      <p class="fine" role="status">
        {found === null
          ? words.needAll
          : spread > WIDE_SPREAD_MS
            ? words.badSpread(spread)
            : words.spread(spread)}
      </p>
    </div>
  );
}

/** Says which moment of the session the film's first picture is. */
export function LineUpPart(props: Props) {
  const lined = props.clip.startS !== null;
  return (
    <details class="fold line-up" open={!lined}>
      <summary>{words.title}</summary>
      <ByOne {...props} />
      <ByThree {...props} />
      {lined && (
        <button type="button" class="quiet" onClick={() => props.setStart(null)}>
          {words.undo}
        </button>
      )}
    </details>
  );
}
