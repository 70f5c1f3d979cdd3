import { sensorProblems } from '../../streaming/contract.ts';
import type { SensorView } from '../../streaming/contract.ts';
import { useSection } from '../feed/hooks.ts';
import { sensorFacts } from '../sensors/SensorLine.tsx';
import { Refusal, useAsk } from '../shell/Ask.tsx';
import { t } from '../strings/strings.ts';

const NEEDED = ['chest', 'trailArm'] as const;

function Checked(props: {
  readonly sensor: (typeof NEEDED)[number];
  readonly sensors: readonly SensorView[];
}) {
  const { sensor, sensors } = props;
  const view = sensors.find((s) => s.sensor === sensor);
  const problem = sensorProblems(sensors).find((p) => p.sensor === sensor);
  const s = t.ready.check;
  const facts = view === undefined ? [] : sensorFacts(view);
  const rest = view?.restNorm ?? null;
  return (
    <li class={problem === undefined ? 'checked checked-well' : 'checked'}>
      <span class="check-mark" aria-hidden="true" />
      <div>
        <p>
          <strong>{t.sensors[sensor]}</strong> {view?.name}{' '}
          <b>{problem === undefined ? s.well : s.waiting}</b>
        </p>
        <p class="fine">
          {[...facts, rest === null ? null : s.rest(t.decimal(rest, 2))]
            .filter((fact) => fact !== null)
            .join(' · ')}
        </p>
        {problem !== undefined && <p>{s.problem[problem.code](sensor)}</p>}
        {view?.reason && <p class="fine">{t.said.link(view.reason)}</p>}
      </div>
    </li>
  );
}

/** Rate, loss and length at rest of both sensors, with what to do where one is not well. */
export function CheckStep() {
  const sensors = useSection('sensors') ?? [];
  const kept = useSection('person')?.calibratedMs;
  const { ask, refusal } = useAsk();
  const well = sensorProblems(sensors).length === 0;
  return (
    <div class="ready-form">
      <h2 tabIndex={-1}>{t.ready.check.title}</h2>
      <p>{t.ready.check.still}</p>
      <ul class="checks">
        {NEEDED.map((sensor) => (
          <Checked key={sensor} sensor={sensor} sensors={sensors} />
        ))}
      </ul>
      <Refusal text={refusal} />
      {kept !== undefined && <p>{t.ready.recheck.kept(t.home.day(kept))}</p>}
      <div class="row">
        {kept !== undefined && (
          <button
            type="button"
            class="primary"
            disabled={!well}
            onClick={() => void ask({ type: 'recheck' })}
          >
            {t.ready.recheck.begin}
          </button>
        )}
        <button
          type="button"
          class={kept === undefined ? 'primary' : 'quiet'}
          disabled={!well}
          onClick={() => void ask({ type: 'next' })}
        >
          {kept === undefined ? t.ready.check.done : t.ready.recheck.whole}
        </button>
      </div>
    </div>
  );
}
