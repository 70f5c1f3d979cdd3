import type { SensorRole } from '../../sensors/sample.ts';
import type { DeskSensor, DeskView } from '../../streaming/contract.ts';
import { useSection } from '../feed/hooks.ts';
import { t } from '../strings/strings.ts';
import { PlaceDrawing } from './PlaceDrawing.tsx';
import { SensorNote, SensorState } from './SensorState.tsx';
import { Trace } from './Trace.tsx';
import { factsOf } from './facts.ts';
import type { Desk } from './useDesk.ts';
import { Own } from '../shell/Own.tsx';

type Send = Desk['send'];

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

function Worn(props: {
  readonly sensor: DeskSensor;
  readonly moving: boolean;
  readonly send: Send;
}) {
  const { sensor, moving, send } = props;
  return (
    <>
      <p class="desk-name">
        <strong>
          <Own>{sensor.name}</Own>
        </strong>{' '}
        <small>{t.said.refusal(sensor.kind)}</small>
      </p>
      <SensorState sensor={sensor} moving={moving} />
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
      <p class="desk-note">
        <SensorNote sensor={sensor} />
      </p>
    </>
  );
}

function emptyText({ tapFor, tapMissed }: DeskView, role: SensorRole): string {
  if (tapFor === role) return t.desk.tapNow;
  return tapMissed === role ? t.desk.tapMissed : t.desk.empty;
}

function Empty(props: { readonly role: SensorRole; readonly view: DeskView; readonly send: Send }) {
  const { role, view, send } = props;
  const waiting = view.tapFor === role;
  const look = role === 'club' ? 'quiet' : 'attention';
  return (
    <>
      <p class={waiting ? 'desk-tap' : 'empty'} role="status">
        {emptyText(view, role)}
      </p>
      <button
        type="button"
        class={waiting ? undefined : look}
        disabled={!view.ready}
        aria-label={waiting ? undefined : t.desk.chooseFor(t.sensors[role])}
        onClick={() => send(waiting ? { type: 'cancel-tap' } : { type: 'assign-by-tap', role })}
      >
        {waiting ? t.desk.cancel : t.desk.choose}
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
  const hand = useSection('hand') ?? 'right';
  const sensor = view.sensors.find((s) => s.role === role);
  const moving = sensor !== undefined && view.shaken === sensor.id;
  return (
    <li class={moving ? 'place place-moving' : 'place'} data-testid={`place-${role}`}>
      <PlaceDrawing role={role} />
      <div class="place-what">
        <h3 id={`place-${role}`} tabIndex={-1}>
          {t.sensors[role]}
        </h3>
        <p class="fine">{t.desk.place[role](hand)}</p>
      </div>
      <div class="place-body">
        {sensor ? (
          <Worn sensor={sensor} moving={moving} send={send} />
        ) : (
          <Empty role={role} view={view} send={send} />
        )}
      </div>
    </li>
  );
}
