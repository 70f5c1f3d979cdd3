import { useEffect, useState } from 'preact/hooks';
import type { DeskSensor } from '../../streaming/contract.ts';
import { reasonParts } from '../../streaming/contract.ts';
import { t } from '../strings/strings.ts';
import { adviceFor } from './facts.ts';

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

const lookOf = ({ state }: DeskSensor): string => {
  if (state === 'streaming') return 'desk-well';
  return state === 'lost' || state === 'retrying' ? 'desk-ill' : 'desk-busy';
};

/** One line: how the link does, and whether this is the sensor that is being moved. */
export function SensorState(props: { readonly sensor: DeskSensor; readonly moving: boolean }) {
  const { sensor, moving } = props;
  return (
    <div class="desk-line">
      <p class={`desk-state ${lookOf(sensor)}`}>
        <span class="sensor-dot" aria-hidden="true" />
        {t.sensors.state[sensor.state]}
        {sensor.state === 'retrying' && sensor.retryInMs !== null && (
          <Retry ms={sensor.retryInMs} />
        )}
      </p>
      {moving && <p class="desk-moving">{t.desk.moving}</p>}
    </div>
  );
}

/** Why the sensor is not connected, or what to do where it does less well than it should. */
export function SensorNote({ sensor }: { readonly sensor: DeskSensor }) {
  const { state, reason } = sensor;
  if (state === 'streaming' || reason === null) return <>{adviceFor(sensor)}</>;
  const { detail } = reasonParts(reason);
  return (
    <>
      {t.said.link(reason)} {detail !== '' && <small>{t.desk.detail(detail)}</small>}
    </>
  );
}
