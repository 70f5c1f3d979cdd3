import { useCallback, useEffect, useState } from 'preact/hooks';
import type { HubSessionList, HubSessionRow } from '../../../streaming/hubContract/review.ts';
import { News } from '../parts/News.tsx';
import { h } from '../../strings/hub.ts';
import { t } from '../../strings/strings.ts';
import { Asked } from '../parts/Asked.tsx';
import { useAct } from '../parts/useAct.ts';
import { useLive, useNews } from '../parts/useLive.ts';
import { sessionFacts } from '../../sessions/sessionFacts.ts';
import { useHub } from '../shell/hub.ts';
import { to } from '../shell/router.ts';

const words = h.student.sessions;

function factsOf({ summary: s, comments }: HubSessionRow): string {
  const pain = s.painBefore === null && s.painAfter === null;
  return [
    ...sessionFacts(s),
    t.sessions.length(s.durationS),
    ...(pain ? [] : [words.pain(s.painBefore, s.painAfter)]),
    ...(comments > 0 ? [words.comments(comments)] : []),
  ].join(' · ');
}

function Row({ row }: { readonly row: HubSessionRow }) {
  const { summary: s, reviewedMs } = row;
  return (
    <li class="session-row">
      <div>
        <h3>
          <a href={to('sessions', s.id)}>{t.sessions.date(s.startedAt)}</a>
        </h3>
        {s.warnings > 0 && <p class="warned">{words.warnings(s.warnings)}</p>}
        <p>{factsOf(row)}</p>
      </div>
      <p class={reviewedMs === null ? 'seen-no' : 'seen-yes'}>
        <b aria-hidden="true">{reviewedMs === null ? '○' : '✓'}</b>{' '}
        {reviewedMs === null ? words.notReviewed : words.reviewed(reviewedMs)}
      </p>
    </li>
  );
}

/** The newest as they are now, before older ones that were asked for. */
function joined(
  newest: readonly HubSessionRow[],
  there: readonly HubSessionRow[],
): readonly HubSessionRow[] {
  const last = newest.at(-1)?.summary.startedAt ?? '';
  return [...newest, ...there.filter(({ summary }) => summary.startedAt < last)];
}

/** So many are shown until more are asked for. */
const FIRST = 6;

function Rows({
  studentId,
  first,
}: {
  readonly studentId: string;
  readonly first: HubSessionList;
}) {
  const { client } = useHub();
  const [rows, setRows] = useState(first.sessions);
  const [more, setMore] = useState(first.more);
  useEffect(() => setRows((there) => joined(first.sessions, there)), [first]);
  const [all, setAll] = useState(first.sessions.length <= FIRST);
  const { busy, problem, run } = useAct();
  const older = (): void =>
    void run(async () => {
      const last = rows.at(-1)?.summary.startedAt;
      const next = await client.students.sessions(
        studentId,
        last === undefined ? null : Date.parse(last),
      );
      setRows([...rows, ...next.sessions]);
      setMore(next.more);
    });
  return (
    <>
      <ul class="session-rows">
        {(all ? rows : rows.slice(0, FIRST)).map((row) => (
          <Row key={row.summary.id} row={row} />
        ))}
      </ul>
      {problem !== null && <p role="alert">{problem}</p>}
      {!all && (
        <p>
          <button type="button" onClick={() => setAll(true)}>
            {words.all(rows.length)}
          </button>
        </p>
      )}
      {all && more && (
        <p>
          <button type="button" disabled={busy} onClick={older}>
            {words.more}
          </button>
        </p>
      )}
    </>
  );
}

/** For a student whose computer sends nothing. */
function MailField({
  studentId,
  again,
}: {
  readonly studentId: string;
  readonly again: () => void;
}) {
  const { client } = useHub();
  const { busy, problem, run } = useAct();
  const [told, setTold] = useState<string | null>(null);
  const take = async (input: HTMLInputElement): Promise<void> => {
    const file = input.files?.[0];
    if (file === undefined) return;
    setTold(null);
    const done = await run(() => client.sessions.importZip(studentId, file));
    input.value = '';
    if (!done) return;
    setTold(words.mailed);
    again();
  };
  return (
    <div class="import">
      <label>
        <span>{words.mail}</span>{' '}
        <input
          type="file"
          accept=".zip,application/zip"
          disabled={busy}
          onChange={(event) => void take(event.currentTarget)}
        />
      </label>
      <p role="status">{busy ? h.shell.loading : told}</p>
      {problem !== null && <p role="alert">{problem}</p>}
    </div>
  );
}

/** What is different in the newest sessions, in words. */
function newsOf(before: HubSessionList, now: HubSessionList): string {
  const there = new Map(before.sessions.map((row) => [row.summary.id, row]));
  const come = now.sessions.filter(({ summary }) => !there.has(summary.id)).length;
  const grown = (of: (row: HubSessionRow) => number): number =>
    now.sessions.reduce((sum, row) => {
      const old = there.get(row.summary.id);
      return sum + (old === undefined ? 0 : Math.max(0, of(row) - of(old)));
    }, 0);
  const analysed = grown(({ summary }) => Number(summary.analysed));
  const comments = grown((row) => row.comments);
  return [
    ...(come > 0 ? [h.news.sessions(come)] : []),
    ...(analysed > 0 ? [h.news.analysed(analysed)] : []),
    ...(comments > 0 ? [h.news.comments(comments)] : []),
  ].join(' ');
}

/** Every session of one student, newest first, and which were looked at. */
export function SessionsPart({ studentId }: { readonly studentId: string }) {
  const { client, me } = useHub();
  const answer = useLive(
    useCallback(() => client.students.sessions(studentId, null), [client, studentId]),
  );
  const news = useNews(answer.data, newsOf);
  return (
    <section class="part" aria-label={words.title}>
      <h2>{words.title}</h2>
      <News text={news} />
      <Asked of={answer}>
        {(list) =>
          list.sessions.length === 0 ? (
            <>
              <p>{words.none}</p>
              <p class="fine">{words.noneHelp}</p>
            </>
          ) : (
            <Rows studentId={studentId} first={list} />
          )
        }
      </Asked>
      {me.role !== 'student' && <MailField studentId={studentId} again={answer.again} />}
    </section>
  );
}
