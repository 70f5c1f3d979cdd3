import type { RefObject } from 'preact';
import { h } from '../../strings/hub.ts';

const words = h.session.clips;

/** Phones film at least so many pictures a second; a step never jumps over one of theirs. */
const PICTURE_S = 1 / 60;

/** Steps of one picture and the speed; where film and curves are in line, the cursor goes along. */
export function FilmSteps(props: {
  readonly video: RefObject<HTMLVideoElement | null>;
  readonly startS: number | null;
  readonly ends: { readonly fromS: number; readonly toS: number };
  readonly setCursorS: (sessionS: number) => void;
}) {
  const step = (way: 1 | -1): void => {
    const film = props.video.current;
    if (film === null) return;
    film.pause();
    const clipS = Math.max(0, film.currentTime + way * PICTURE_S);
    film.currentTime = clipS;
    if (props.startS === null) return;
    const sessionS = props.startS + clipS;
    if (sessionS >= props.ends.fromS && sessionS <= props.ends.toS) props.setCursorS(sessionS);
  };
  const setSpeed = (rate: number): void => {
    if (props.video.current !== null) props.video.current.playbackRate = rate;
  };
  return (
    <div class="row film-steps">
      <button type="button" onClick={() => step(-1)}>
        {words.back}
      </button>
      <button type="button" onClick={() => step(1)}>
        {words.on}
      </button>
      <label>
        {words.speed}{' '}
        <select defaultValue="1" onChange={(event) => setSpeed(Number(event.currentTarget.value))}>
          {words.speeds.map(([rate, name]) => (
            <option key={rate} value={rate}>
              {name}
            </option>
          ))}
        </select>
      </label>
    </div>
  );
}
