import type { SensorRole } from '../../sensors/sample.ts';
import type { DeskSensor, DeskView } from '../../streaming/contract.ts';
import { t } from '../strings/strings.ts';
import { BlinkButton, SensorState } from './Place.tsx';
import { Trace } from './Trace.tsx';
import { signalText } from './facts.ts';
import type { Desk } from './useDesk.ts';

const ROLES: readonly SensorRole[] = ['chest', 'trailArm', 'club'];

function Row(props: {
  readonly sensor: DeskSensor;
  readonly moving: boolean;
  readonly send: Desk['send'];
}) {
  const { sensor, moving, send } = props;
  return (
    <li class={moving ? 'around-row place-moving' : 'around-row'} data-testid="around">
      <div>
        <p class="desk-name">
          <strong>{sensor.name}</strong> <small>{t.said.refusal(sensor.kind)}</small>
        </p>
        <p class="fine">{signalText(sensor.rssiDbm) ?? t.desk.unknown}</p>
      </div>
      <div>
        <SensorState sensor={sensor} />
        {moving && <p class="desk-moving">{t.desk.moving}</p>}
      </div>
      {sensor.trace.length > 0 ? <Trace values={sensor.trace} name={sensor.name} /> : <span />}
      <div class="desk-buttons">
        {ROLES.map((role) => (
          <button
            type="button"
            key={role}
            aria-label={`${t.desk.wear(t.sensors[role])}: ${sensor.name}`}
            onClick={() => send({ type: 'assign', id: sensor.id, role })}
          >
            {t.sensors[role]}
          </button>
        ))}
        <BlinkButton sensor={sensor} send={send} />
      </div>
    </li>
  );
}

/** Sensors that are heard and not worn. */
export function Around({ view, send }: { readonly view: DeskView; readonly send: Desk['send'] }) {
  const others = view.sensors.filter((s) => s.role === null);
  const state = view.searching ? t.desk.searching : t.desk.notSearching;
  return (
    <section class="desk-part" aria-labelledby="around">
      <h2 id="around">{t.desk.around}</h2>
      <p class="fine" role="status">
        {view.recording ? t.desk.recording : state}
      </p>
      {others.length === 0 && !view.recording && <p class="empty">{t.desk.nothingAround}</p>}
      <ul class="around">
        {others.map((sensor) => (
          <Row key={sensor.id} sensor={sensor} moving={view.shaken === sensor.id} send={send} />
        ))}
      </ul>
    </section>
  );
}
