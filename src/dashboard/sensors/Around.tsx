import type { DeskSensor, DeskView } from '../../streaming/contract.ts';
import { t } from '../strings/strings.ts';
import { BlinkButton } from './Place.tsx';
import { PLACES } from './Places.tsx';
import { SensorNote, SensorState } from './SensorState.tsx';
import { Trace } from './Trace.tsx';
import { signalText } from './facts.ts';
import type { Desk } from './useDesk.ts';
import { Own } from '../shell/Own.tsx';

/** Signal, and charge where it is known. */
const linkText = ({ rssiDbm, batteryPct }: DeskSensor): string =>
  [
    `${t.desk.signal}: ${signalText(rssiDbm) ?? t.desk.unknown}`,
    batteryPct === null ? null : `${t.desk.battery}: ${t.desk.percent(batteryPct.toFixed(0))}`,
  ]
    .filter((text) => text !== null)
    .join(' · ');

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
          <strong>
            <Own>{sensor.name}</Own>
          </strong>{' '}
          <small>{t.said.refusal(sensor.kind)}</small>
        </p>
        <p class="fine">{linkText(sensor)}</p>
      </div>
      <SensorState sensor={sensor} moving={moving} />
      <Trace values={sensor.trace} name={sensor.name} />
      <div class="desk-buttons desk-wear" role="group" aria-label={t.desk.wearGroup(sensor.name)}>
        <span class="fine" aria-hidden="true">
          {t.desk.wearOn}
        </span>
        {PLACES.map((role) => (
          <button
            type="button"
            key={role}
            aria-label={t.desk.wear(t.sensors[role], sensor.name)}
            onClick={() => send({ type: 'assign', id: sensor.id, role })}
          >
            {t.sensors[role]}
          </button>
        ))}
        <BlinkButton sensor={sensor} send={send} />
      </div>
      {sensor.state !== 'streaming' && sensor.reason !== null && (
        <p class="desk-note">
          <SensorNote sensor={sensor} />
        </p>
      )}
    </li>
  );
}

function stateText({ ready, recording, problem }: DeskView): string {
  if (recording) return t.desk.recording;
  if (ready) return t.desk.searching;
  return problem === null ? t.desk.notSearching : t.desk.noSearch;
}

/** Sensors that are heard and not worn. */
export function Around({ view, send }: { readonly view: DeskView; readonly send: Desk['send'] }) {
  const others = view.sensors.filter((s) => s.role === null);
  return (
    <section class="desk-part" aria-labelledby="around">
      <h2 id="around">{t.desk.around}</h2>
      <p class="fine" role="status">
        {stateText(view)}
      </p>
      {others.length === 0 && view.searching && <p class="empty">{t.desk.nothingAround}</p>}
      <ul class="around">
        {others.map((sensor) => (
          <Row key={sensor.id} sensor={sensor} moving={view.shaken === sensor.id} send={send} />
        ))}
      </ul>
    </section>
  );
}
