import type { SensorRole } from '../../sensors/sample.ts';
import type { DeskProblem, DeskView } from '../../streaming/contract.ts';
import { useSection } from '../feed/hooks.ts';
import { hrefOf } from '../shell/router.ts';
import { t } from '../strings/strings.ts';
import { Around } from './Around.tsx';
import { Places, useFocusAtPlace } from './Places.tsx';
import { SyncCheck } from './SyncCheck.tsx';
import { type Desk, useDesk } from './useDesk.ts';

function Problem({ problem }: { readonly problem: DeskProblem }) {
  return (
    <section class="desk-problem" aria-labelledby="problem" role="alert">
      <h2 id="problem">{t.desk.problem}</h2>
      <p class="lead">{t.said.refusal(problem.message)}</p>
      <h3>{t.desk.mend}</h3>
      <ol>
        {problem.mend.map(({ say, run }) => (
          <li key={say}>
            {t.said.refusal(say)} {run !== null && <code>{run}</code>}
          </li>
        ))}
      </ol>
      {problem.detail !== '' && <p class="fine">{t.desk.detail(problem.detail)}</p>}
      <p>{t.desk.demo}</p>
    </section>
  );
}

/** Sensors may be chosen and checked in any practice; only one of them takes their samples. */
function NotUsed() {
  const source = useSection('source');
  if (source === null || source.kind === 'ble') return null;
  if (source.kind === 'replay') return <p class="notice">{t.desk.notUsedReplay}</p>;
  return (
    <p class="notice">
      {t.desk.notUsed} <a href={hrefOf('today')}>{t.desk.toToday}</a>
    </p>
  );
}

const streams = (view: DeskView, role: SensorRole): boolean =>
  view.sensors.some((s) => s.role === role && s.state === 'streaming');

function Open(props: { readonly view: DeskView; readonly send: Desk['send'] }) {
  const { view } = props;
  const send = useFocusAtPlace(view, props.send);
  const able = streams(view, 'chest') && streams(view, 'trailArm');
  return (
    <>
      {view.problem && <Problem problem={view.problem} />}
      <Places view={view} send={send} />
      <Around view={view} send={send} />
      <SyncCheck sync={view.sync} able={able} send={send} />
    </>
  );
}

/** Who is around, who is worn where, and how well each does. */
export function SensorsScreen() {
  const { view, absent, error, send } = useDesk();
  return (
    <main id="main" class="page desk" tabIndex={-1}>
      <h1>{t.desk.title}</h1>
      <p class="lead">{t.desk.lead}</p>
      {error !== null && (
        <p class="notice notice-bad desk-error" role="alert">
          {error}
        </p>
      )}
      <NotUsed />
      {view !== null && <Open view={view} send={send} />}
      {view === null && <p class="empty">{absent ? t.desk.none : t.desk.opening}</p>}
      {absent && <p class="fine">{t.desk.demo}</p>}
    </main>
  );
}
