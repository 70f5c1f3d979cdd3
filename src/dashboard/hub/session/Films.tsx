import { useState } from 'preact/hooks';
import type { JudgedRepetition } from '../../../coaching/judgement.ts';
import { MAX_CLIP_BYTES } from '../../../streaming/hubContract/review.ts';
import { h } from '../../strings/hub.ts';
import { isolated } from '../../strings/isolated.ts';
import { useAct } from '../parts/useAct.ts';
import { type Cursor, FilmTools } from './Film.tsx';
import { type SessionDesk, shownClip } from './desk.ts';
import { MB, TYPES, unfit } from './fit.ts';
import { Own } from '../../shell/Own.tsx';

const words = h.session.clips;
function Attach({ desk }: { readonly desk: SessionDesk }) {
  const { busy, problem, run, forget } = useAct();
  const [told, setTold] = useState<string | null>(null);
  const take = async (input: HTMLInputElement): Promise<void> => {
    const file = input.files?.[0];
    if (file === undefined) return;
    const reason = unfit(file);
    input.value = '';
    setTold(reason ?? words.sending(file.name));
    if (reason !== null) return forget();
    const done = await run(async () => {
      await desk.client.sessions.addClip(desk.session.summary.id, file);
      desk.again();
    });
    setTold(done ? words.sent : null);
  };
  return (
    <div class="attach">
      <label class="import">
        <span>{words.attach}</span>
        <input
          type="file"
          accept={TYPES.join(',')}
          disabled={busy}
          onChange={(event) => void take(event.currentTarget)}
        />
      </label>
      <p class="fine">{words.most(MAX_CLIP_BYTES / MB)}</p>
      <p role="status">{told}</p>
      {problem !== null && <p role="alert">{problem}</p>}
      <details class="fold">
        <summary>{words.camera.title}</summary>
        <ul class="plain">
          {words.camera.items.map((item) => (
            <li key={item}>{item}</li>
          ))}
        </ul>
        <p class="fine">{words.camera.basis}</p>
      </details>
    </div>
  );
}

/** Below an open repetition: which film stands beside its curves, how it is lined up, and one more. */
export function FilmsBeside(props: {
  readonly r: JudgedRepetition;
  readonly desk: SessionDesk;
  readonly cursor: Cursor;
}) {
  const { clips } = props.desk.session;
  const clip = shownClip(props.desk);
  return (
    <section class="films">
      <h2>{words.title}</h2>
      {clips.length > 1 && (
        <label>
          {words.choose}{' '}
          <select
            value={clip?.id}
            onChange={(event) => props.desk.chooseClip(event.currentTarget.value)}
          >
            {clips.map(({ id, name }) => (
              <option key={id} value={id}>
                {isolated(name)}
              </option>
            ))}
          </select>
        </label>
      )}
      {clip === undefined ? (
        <p class="empty">{words.none}</p>
      ) : (
        <FilmTools key={clip.id} clip={clip} {...props} />
      )}
      <Attach desk={props.desk} />
    </section>
  );
}

/** Films of the session, before a repetition is opened. */
export function FilmsOfSession({ desk }: { readonly desk: SessionDesk }) {
  const { clips } = desk.session;
  return (
    <section class="films">
      <h2>{words.title}</h2>
      {clips.length === 0 ? (
        <p class="empty">{words.none}</p>
      ) : (
        <>
          <ul class="lines">
            {clips.map(({ id, name, bytes, by, view }) => (
              <li key={id}>
                <span>
                  <b>
                    <Own>{name}</Own>
                  </b>{' '}
                  {words.size(Math.max(1, Math.round(bytes / MB)))} {words.by(by)}
                  {view !== null && `, ${words.views[view]}`}
                </span>
              </li>
            ))}
          </ul>
          <p class="fine">{words.open}</p>
        </>
      )}
      <Attach desk={desk} />
    </section>
  );
}
