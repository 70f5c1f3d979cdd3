import { useMemo } from 'preact/hooks';
import type { Progress } from '../../streaming/sessionsContract.ts';
import { useLoad } from '../sessions/useLoad.ts';
import { Caution } from '../shell/Caution.tsx';
import { t } from '../strings/strings.ts';
import { ProgressView } from './ProgressView.tsx';

const words = t.progress;
const sessionHref = (id: string): string => `#/sessions/${encodeURIComponent(id)}`;

/** The course over the sessions of this computer. */
export function ProgressScreen() {
  const { data, problem, again } = useLoad<Progress>('progress');
  const now = useMemo(() => new Date().toISOString(), [data]);
  return (
    <main id="main" class="sessions" tabIndex={-1}>
      <h1>{words.title}</h1>
      {problem !== null && (
        <p role="alert">
          {problem}{' '}
          <button type="button" onClick={again}>
            {t.review.again}
          </button>
        </p>
      )}
      {data === null && problem === null && <p role="status">{words.loading}</p>}
      {data !== null && (
        <ProgressView
          sessions={data.sessions}
          notCounted={data.notCounted}
          sessionHref={sessionHref}
          now={now}
        />
      )}
      <Caution />
    </main>
  );
}
