import { t } from '../../strings/strings.ts';
import type { RepetitionEvent } from './events.ts';
import { type Play, SPEEDS, type SpeedName, lessMotion } from './usePlay.ts';

const words = t.review.repetition;

const timeText = (s: number): string => words.time(`${s > 0 ? '+' : ''}${t.decimal(s, 2)}`);

function Events(props: {
  readonly events: readonly RepetitionEvent[];
  readonly alignS: number;
  readonly go: (sessionS: number) => void;
}) {
  return (
    <div class="event-buttons" role="group" aria-label={words.events}>
      {props.events.map((e) => (
        <button key={e.name} type="button" onClick={() => props.go(e.timeS)}>
          {words.event[e.name]} <small>{timeText(e.timeS - props.alignS)}</small>
        </button>
      ))}
    </div>
  );
}

/** Moves one moment through curves and body: a slider, play, and the events as places to go to. */
export function Scrubber(props: {
  /** Session s. */
  readonly fromS: number;
  readonly toS: number;
  readonly alignS: number;
  /** What the alignment is, after a time: "from the release". */
  readonly from: string;
  readonly cursorS: number;
  readonly setCursorS: (sessionS: number) => void;
  readonly events: readonly RepetitionEvent[];
  readonly play: Play;
}) {
  const { fromS, toS, alignS, cursorS, setCursorS, play } = props;
  const inside = props.events.filter((e) => e.timeS >= fromS - 0.005 && e.timeS <= toS);
  const at = timeText(cursorS - alignS);
  return (
    <div class="scrubber">
      <button type="button" class="play" aria-pressed={play.playing} onClick={play.toggle}>
        {play.playing ? words.stop : words.play}
      </button>
      <label class="scrub">
        <span class="hidden">{words.scrub}</span>
        <input
          type="range"
          min={fromS - alignS}
          max={toS - alignS}
          step={0.01}
          value={cursorS - alignS}
          aria-valuetext={`${at} ${props.from}`}
          onInput={(event) => setCursorS(Number(event.currentTarget.value) + alignS)}
        />
      </label>
      <output>
        {at} <small>{props.from}</small>
      </output>
      <label class="speed">
        {words.speed}{' '}
        <select
          value={play.speed}
          onChange={(event) => play.setSpeed(event.currentTarget.value as SpeedName)}
        >
          {Object.keys(SPEEDS).map((speed) => (
            <option key={speed} value={speed}>
              {words.speeds[speed as SpeedName]}
            </option>
          ))}
        </select>
      </label>
      <Events events={inside} alignS={alignS} go={setCursorS} />
      {lessMotion() && <p class="fine">{words.stepped}</p>}
    </div>
  );
}
