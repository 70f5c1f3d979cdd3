import { useSection } from '../feed/hooks.ts';
import { t } from '../strings/strings.ts';

/** Why nothing more comes, and what a refused calibration asks for. */
export function SourceNotice() {
  const source = useSection('source');
  const notKept = useSection('keeping')?.problem ?? null;
  const quality = useSection('calibration')?.quality ?? null;
  const problems = quality?.problems ?? [];
  return (
    <>
      {source?.state === 'failed' && (
        <p class="notice notice-bad" role="alert">
          {t.source.failed(source.reason ?? '')}
        </p>
      )}
      {notKept !== null && (
        <p class="notice" role="status">
          {notKept}
        </p>
      )}
      {problems.map((problem) => (
        <p
          key={problem.code}
          class={problem.refuses ? 'notice notice-bad' : 'notice'}
          role={problem.refuses ? 'alert' : 'status'}
        >
          {problem.message}
        </p>
      ))}
    </>
  );
}
