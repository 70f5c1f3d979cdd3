import { useSection } from '../feed/hooks.ts';
import { t } from '../strings/strings.ts';

/** Why nothing more comes, and what a refused calibration asks for. */
export function SourceNotice() {
  const source = useSection('source');
  const keeping = useSection('keeping');
  const said = keeping?.problem ?? keeping?.restored ?? null;
  const quality = useSection('calibration')?.quality ?? null;
  const problems = quality?.problems ?? [];
  return (
    <>
      {source?.state === 'failed' && (
        <p class="notice notice-bad" role="alert">
          {t.source.failed(t.said.refusal(source.reason ?? ''))}
        </p>
      )}
      {said !== null && (
        <p class="notice" role="status">
          {t.said.keeping(said)}
        </p>
      )}
      {problems.map((problem) => (
        <p
          key={problem.code}
          class={problem.refuses ? 'notice notice-bad' : 'notice'}
          role={problem.refuses ? 'alert' : 'status'}
        >
          {t.said.calibration(problem)}
        </p>
      ))}
    </>
  );
}
