import { useState } from 'preact/hooks';
import type { SessionList as List, SessionSummary } from '../../streaming/sessionsContract.ts';
import { t } from '../strings/strings.ts';
import { ImportField } from './ImportField.tsx';
import { ask, sessionPath } from './api.ts';
import { sessionFacts } from './sessionFacts.ts';
import { useLoad } from './useLoad.ts';

const words = t.sessions;

function Facts({ s }: { readonly s: SessionSummary }) {
  return <p>{[words.length(s.durationS), ...sessionFacts(s)].join(' · ')}</p>;
}

function Row({ s, remove }: { readonly s: SessionSummary; readonly remove: () => void }) {
  const date = words.date(s.startedAt);
  return (
    <li class="session-row">
      <div>
        <h2>
          <a href={`#/sessions/${encodeURIComponent(s.id)}`}>{date}</a>
        </h2>
        {s.warnings > 0 && <p class="warned">{words.warnings(s.warnings)}</p>}
        <Facts s={s} />
      </div>
      {s.state !== 'recording' && (
        <button
          type="button"
          class="quiet"
          aria-label={`${words.remove}: ${date}`}
          onClick={remove}
        >
          {words.remove}
        </button>
      )}
    </li>
  );
}

/** All kept sessions, newest first. */
export function SessionList() {
  const { data, problem, again } = useLoad<List>('sessions');
  const [told, setTold] = useState<string | null>(null);
  const [deleted, setDeleted] = useState<string | null>(null);
  const tell = (sentence: string, id: string | null): void => {
    setTold(sentence);
    setDeleted(id);
    again();
  };
  const act = (method: string, path: string, sentence: string, id: string | null): void =>
    void ask(path, { method }).then(
      () => tell(sentence, id),
      (error: Error) => tell(error.message, null),
    );
  const remove = (s: SessionSummary): void =>
    act('DELETE', sessionPath(s.id), words.removed(words.date(s.startedAt)), s.id);
  return (
    <>
      <h1>{words.title}</h1>
      <ImportField done={again} />
      <div role="status" class="told">
        {told !== null && <p>{told}</p>}
        {deleted !== null && (
          <button
            type="button"
            class="quiet"
            onClick={() => act('POST', `${sessionPath(deleted)}/restore`, words.broughtBack, null)}
          >
            {words.undo}
          </button>
        )}
      </div>
      {problem !== null && (
        <p role="alert">
          {problem}{' '}
          <button type="button" onClick={again}>
            {t.review.again}
          </button>
        </p>
      )}
      {data === null && problem === null && <p>{words.loading}</p>}
      {data?.sessions.length === 0 && <p class="empty">{words.none}</p>}
      <ul class="session-rows">
        {data?.sessions.map((s) => (
          <Row key={s.id} s={s} remove={() => remove(s)} />
        ))}
      </ul>
      {data !== null && <p class="fine">{words.folder(data.folder)}</p>}
    </>
  );
}
