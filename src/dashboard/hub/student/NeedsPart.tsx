import type { Need, StudentView } from '../../../streaming/hubContract/students.ts';
import { h } from '../../strings/hub.ts';
import { t } from '../../strings/strings.ts';
import { NeedShape } from '../needs/NeedShape.tsx';
import { useAct } from '../parts/useAct.ts';
import { useHub } from '../shell/hub.ts';
import { to } from '../shell/router.ts';
import { ClosePain } from './ClosePain.tsx';
import { Own } from '../../shell/Own.tsx';

const words = h.needs;

function Line(props: { readonly need: Need; readonly s: StudentView; readonly again: () => void }) {
  const { need, s } = props;
  const { code, text, sessionId, atMs, quote, answerTo } = need;
  return (
    <li>
      <NeedShape code={code} />
      <span>
        <b>{words.names[code]}</b> {atMs !== null && words.on(atMs)}{' '}
        <Own>{quote === null ? t.said.need(text) : words.quoted(quote)}</Own>{' '}
        {sessionId !== null && (
          <a href={`${to('sessions', sessionId)}${answerTo === null ? '' : `?answer=${answerTo}`}`}>
            {answerTo === null ? words.pain.session : words.answer}
          </a>
        )}
      </span>
      {code === 'pain' && sessionId !== null && (
        <ClosePain studentId={s.id} name={s.name} sessionId={sessionId} again={props.again} />
      )}
    </li>
  );
}

/** Why a look is needed, with the way to each session; open pain can be closed. */
export function NeedsPart({ s, again }: { readonly s: StudentView; readonly again: () => void }) {
  const real = s.needs.filter(({ code }) => code !== 'none');
  if (real.length === 0) return null;
  return (
    <ul class="needs" aria-label={h.student.needs}>
      {real.map((need, i) => (
        <Line key={i} need={need} s={s} again={again} />
      ))}
    </ul>
  );
}

/** Pain that a coach closed, with the reasons. */
export function PainHistory({ s, again }: { readonly s: StudentView; readonly again: () => void }) {
  const { client } = useHub();
  const { busy, problem, run } = useAct();
  if (s.painClosings.length === 0) return null;
  const reopen = (id: string): void =>
    void run(() => client.students.reopenPain(id)).then((done) => done && again());
  return (
    <section class="part" aria-label={words.pain.history}>
      <h2>{words.pain.history}</h2>
      {problem !== null && <p role="alert">{problem}</p>}
      <ul class="lines">
        {s.painClosings.map(({ id, throughMs, by, atMs, reason, reopenedMs }) => (
          <li key={id}>
            <span>
              {words.pain.line(throughMs, by, atMs)} <Own>{reason}</Own>
            </span>
            {reopenedMs === null ? (
              <button
                type="button"
                class="quiet"
                disabled={busy}
                aria-label={words.pain.reopenOf(reason)}
                onClick={() => reopen(id)}
              >
                {words.pain.reopen}
              </button>
            ) : (
              <span class="fine">{words.pain.reopened(reopenedMs)}</span>
            )}
          </li>
        ))}
      </ul>
    </section>
  );
}
