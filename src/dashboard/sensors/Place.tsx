import { useEffect, useState } from 'preact/hooks';
import type { SensorRole } from '../../sensors/sample.ts';
import type { DeskSensor, DeskView } from '../../streaming/contract.ts';
import { t } from '../strings/strings.ts';
import { PlaceDrawing } from './PlaceDrawing.tsx';
import { Trace } from './Trace.tsx';
import { factsOf } from './facts.ts';
import type { Desk } from './useDesk.ts';

type Send = Desk['send'];

/** Counts down from when the page heard of it. */
function Retry({ ms }: { readonly ms: number }) {
  const [leftMs, setLeftMs] = useState(ms);
  useEffect(() => {
    const fromMs = performance.now();
    const timer = setInterval(() => setLeftMs(ms - (performance.now() - fromMs)), 500);
    return () => clearInterval(timer);
  }, [ms]);
  return <>{t.desk.retryIn(Math.max(0, Math.ceil(leftMs / 1000)))}</>;
}

export function SensorState({ sensor }: { readonly sensor: DeskSensor }) {
  const well = sensor.state === 'streaming';
  const ill = sensor.state === 'lost' || sensor.state === 'retrying';
  const look = well ? 'desk-well' : ill ? 'desk-ill' : 'desk-busy';
  return (
    <>
      <p class={`desk-state ${look}`}>
        <span class="sensor-dot" aria-hidden="true" />
        {t.sensors.state[sensor.state]}
        {sensor.state === 'retrying' && sensor.retryInMs !== null && (
          <Retry ms={sensor.retryInMs} />
        )}
      </p>
      {sensor.reason !== null && !well && <p class="desk-reason">{t.said.link(sensor.reason)}</p>}
    </>
  );
}

export function BlinkButton({
  sensor,
  send,
}: {
  readonly sensor: DeskSensor;
  readonly send: Send;
}) {
  if (!sensor.canBlink || sensor.state !== 'streaming') return null;
  return (
    <button
      type="button"
      class="quiet"
      aria-label={t.desk.blinkNamed(sensor.name)}
      onClick={() => send({ type: 'identify', id: sensor.id })}
    >
      {t.desk.blink}
    </button>
  );
}

function Facts({ sensor }: { readonly sensor: DeskSensor }) {
  return (
    <dl class="desk-facts">
      {factsOf(sensor).map(({ name, text, ill }) => (
        <div key={name} class={ill ? 'fact-ill' : undefined}>
          <dt>{name}</dt>
          <dd>{text}</dd>
        </div>
      ))}
    </dl>
  );
}

function Worn({ sensor, send }: { readonly sensor: DeskSensor; readonly send: Send }) {
  return (
    <>
      <p class="desk-name">
        <strong>{sensor.name}</strong> <small>{t.said.refusal(sensor.kind)}</small>
      </p>
      <SensorState sensor={sensor} />
      <Trace values={sensor.trace} name={sensor.name} />
      <Facts sensor={sensor} />
      <div class="desk-buttons">
        <BlinkButton sensor={sensor} send={send} />
        <button
          type="button"
          class="quiet"
          aria-label={t.desk.takeOffNamed(sensor.name)}
          onClick={() => send({ type: 'forget', id: sensor.id })}
        >
          {t.desk.takeOff}
        </button>
      </div>
    </>
  );
}

function Empty(props: {
  readonly role: SensorRole;
  readonly waiting: boolean;
  readonly ready: boolean;
  readonly send: Send;
}) {
  const { role, waiting, ready, send } = props;
  if (waiting) {
    return (
      <>
        <p class="desk-tap" role="status">
          {t.desk.tapNow}
        </p>
        <button type="button" onClick={() => send({ type: 'cancel-tap' })}>
          {t.desk.cancel}
        </button>
      </>
    );
  }
  return (
    <>
      <p class="empty">{t.desk.empty}</p>
      <button
        type="button"
        class={role === 'club' ? 'quiet' : 'attention'}
        disabled={!ready}
        onClick={() => send({ type: 'assign-by-tap', role })}
      >
        {t.desk.choose}
      </button>
    </>
  );
}

/** One place of the body and the sensor that is worn there. */
export function Place(props: {
  readonly role: SensorRole;
  readonly view: DeskView;
  readonly send: Send;
}) {
  const { role, view, send } = props;
  const sensor = view.sensors.find((s) => s.role === role);
  const moving = sensor !== undefined && view.shaken === sensor.id;
  return (
    <li class={moving ? 'place place-moving' : 'place'} data-testid={`place-${role}`}>
      <PlaceDrawing role={role} />
      <div class="place-what">
        <h3>{t.sensors[role]}</h3>
        <p class="fine">{t.desk.place[role]}</p>
      </div>
      <div class="place-body">
        {sensor ? (
          <Worn sensor={sensor} send={send} />
        ) : (
          <Empty role={role} waiting={view.tapFor === role} ready={view.ready} send={send} />
        )}
        {moving && <p class="desk-moving">{t.desk.moving}</p>}
      </div>
    </li>
  );
}
