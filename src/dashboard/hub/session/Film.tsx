import { useState } from 'preact/hooks';
import type { JudgedRepetition } from '../../../coaching/judgement.ts';
import type { Clip, ClipChange } from '../../../streaming/hubContract/review.ts';
import { h } from '../../strings/hub.ts';
import { useAct } from '../parts/useAct.ts';
import { FilmSteps } from './FilmSteps.tsx';
import { LineUpPart } from './LineUpPart.tsx';
import type { SessionDesk } from './desk.ts';
import { useFilm } from './useFilm.ts';

const words = h.session.clips;

export interface Cursor {
  readonly cursorS: number;
  readonly setCursorS: (sessionS: number) => void;
}

/** So much before and after a repetition its curves reach, s. */
const BEFORE_S = 1.5;
const AFTER_S = 1;

function ViewChoice(props: { readonly clip: Clip; readonly change: (c: ClipChange) => void }) {
  return (
    <label>
      {words.view}{' '}
      <select
        value={props.clip.view ?? ''}
        onChange={({ currentTarget: { value } }) =>
          props.change({ view: value === '' ? null : (value as keyof typeof words.views) })
        }
      >
        <option value="">{words.viewUnknown}</option>
        {Object.entries(words.views).map(([view, name]) => (
          <option key={view} value={view}>
            {name}
          </option>
        ))}
      </select>
    </label>
  );
}

function State({ clip, shown }: { readonly clip: Clip; readonly shown: boolean }) {
  const text = clip.startS === null ? words.notInLine : shown ? words.inLine : words.outside;
  return (
    <p class="fine" role="status">
      {text}
    </p>
  );
}

interface FilmProps {
  readonly clip: Clip;
  readonly r: JudgedRepetition;
  readonly desk: SessionDesk;
  readonly cursor: Cursor;
}

/** A film beside the curves of one repetition; lined up, both show the same moment. */
export function Film({ clip, r, desk, cursor }: FilmProps) {
  const { video } = desk;
  const [broken, setBroken] = useState(false);
  const ends = { fromS: r.startS - BEFORE_S, toS: r.endS + AFTER_S };
  const shown = useFilm(video, clip.startS, ends, cursor.cursorS, cursor.setCursorS);
  return (
    <section class="film" aria-label={words.title}>
      <video
        ref={video}
        src={desk.client.sessions.clipAddress(clip.id)}
        controls
        muted
        playsInline
        preload="metadata"
        aria-label={`${words.title}: ${clip.name}`}
        onError={() => setBroken(true)}
      />
      {broken && <p role="alert">{words.failed}</p>}
      <State clip={clip} shown={shown} />
      <FilmSteps video={video} startS={clip.startS} setCursorS={cursor.setCursorS} ends={ends} />
    </section>
  );
}

/** What is set of a film: from where it is seen, how it is lined up. */
export function FilmTools({ clip, r, desk, cursor }: FilmProps) {
  const { busy, problem, run } = useAct();
  const act = (what: () => Promise<unknown>): void =>
    void run(async () => {
      await what();
      desk.again();
    });
  const change = (to: ClipChange): void => act(() => desk.client.sessions.changeClip(clip.id, to));
  return (
    <div class="film-tools">
      <div class="row">
        <ViewChoice clip={clip} change={change} />
        <button
          type="button"
          class="quiet"
          disabled={busy}
          onClick={() => act(() => desk.client.sessions.dropClip(clip.id))}
        >
          {words.remove}
        </button>
      </div>
      {problem !== null && <p role="alert">{problem}</p>}
      <LineUpPart
        clip={clip}
        r={r}
        video={desk.video}
        cursorS={cursor.cursorS}
        setStart={(startS) => change({ startS })}
      />
    </div>
  );
}
