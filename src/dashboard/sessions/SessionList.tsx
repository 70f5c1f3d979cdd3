import { useState } from 'preact/hooks';
import type {
  Imported,
  SessionList as List,
  SessionSummary,
} from '../../streaming/sessionsContract.ts';
import { t } from '../strings/strings.ts';
import { ask, sessionPath } from './api.ts';
import { useLoad } from './useLoad.ts';

const words = t.sessions;

function Facts({ s }: { readonly s: SessionSummary }) {
  const facts = [
    words.length(s.durationS),
    words.passed(s.passed, s.scored),
    words.balls(s.ballsInMix, s.balls),
    ...(s.simulated ? [words.simulated] : []),
    ...(s.state === 'complete' ? [] : [words.states[s.state]]),
    ...(s.problem === null ? [] : [s.problem]),
  ];
  return <p>{facts.join(' · ')}</p>;
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

function ImportField({ done }: { readonly done: (sentence: string) => void }) {
  const take = async (event: Event): Promise<void> => {
    const input = event.currentTarget as HTMLInputElement;
    const file = input.files?.[0];
    if (!file) return;
    const headers = { 'content-type': 'application/zip' };
    await ask<Imported>('import', { method: 'POST', body: file, headers }).then(
      () => done(words.imported),
      (error: Error) => done(error.message),
    );
    input.value = '';
  };
  return (
    <label class="import">
      <span>{words.import}</span>
      <input type="file" accept=".zip,application/zip" onChange={(event) => void take(event)} />
    </label>
  );
}

/** All kept sessions, newest first. */
export function SessionList() {
  const { data, problem, again } = useLoad<List>('sessions');
  const [told, setTold] = useState<string | null>(null);
  const [deleted, setDeleted] = useState<string | null>(null);
  const act = (method: string, path: string, sentence: string, id: string | null): void => {
    ask(path, { method })
      .then(() => setDeleted(id))
      .then(
        () => setTold(sentence),
        (error: Error) => setTold(error.message),
      )
      .finally(again);
  };
  const remove = (s: SessionSummary): void =>
    act('DELETE', sessionPath(s.id), words.removed(words.date(s.startedAt)), s.id);
  return (
    <>
      <h1>{words.title}</h1>
      <p role="status" class="told">
        {told}{' '}
        {deleted !== null && (
          <button
            type="button"
            onClick={() => act('POST', `${sessionPath(deleted)}/restore`, '', null)}
          >
            {words.undo}
          </button>
        )}
      </p>
      {problem !== null && <p role="alert">{problem}</p>}
      {data === null && problem === null && <p>{words.loading}</p>}
      {data?.sessions.length === 0 && <p class="empty">{words.none}</p>}
      <ul class="session-rows">
        {data?.sessions.map((s) => (
          <Row key={s.id} s={s} remove={() => remove(s)} />
        ))}
      </ul>
      <ImportField
        done={(sentence) => {
          setDeleted(null);
          setTold(sentence);
          again();
        }}
      />
      {data !== null && <p class="fine">{words.folder(data.folder)}</p>}
    </>
  );
}
