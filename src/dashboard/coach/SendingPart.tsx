import type { CoachLink, SendingRow } from '../../streaming/hubContract/coachLink.ts';
import { t } from '../strings/strings.ts';

const words = t.coach.sending;

function Row({ row }: { readonly row: SendingRow }) {
  return (
    <li>
      <a href={`#/sessions/${row.id}`}>{t.coach.date(row.startedMs)}</a>
      {row.simulated && <span class="badge">{words.simulated}</span>}
      <span>
        {words.states[row.state]}
        {row.share !== null && ` ${words.share(row.share)}`}
      </span>
      {row.share !== null && <progress value={row.share} aria-label={words.states.sending} />}
      {row.why !== null && <span class="fine">{t.coach.said(row.why)}</span>}
    </li>
  );
}

/** How far each session has come. */
export function SendingPart({ link }: { readonly link: CoachLink }) {
  const { sessions } = link;
  const sent = sessions.filter(({ state }) => state === 'sent').length;
  return (
    <section aria-labelledby="sending">
      <h2 id="sending">{words.title}</h2>
      <p>{sessions.length === 0 ? words.none : words.counts(sent, sessions.length)}</p>
      <ul class="sending">
        {sessions.map((row) => (
          <Row key={row.id} row={row} />
        ))}
      </ul>
    </section>
  );
}
