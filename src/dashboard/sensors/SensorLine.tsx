import type { SensorView } from '../../streaming/contract.ts';
import { useFeedPart, useSection } from '../feed/hooks.ts';
import { t } from '../strings/strings.ts';
import { isWell } from './stale.ts';

function rateText({ rateHz, nominalRateHz }: SensorView): string {
  if (rateHz === null) return t.sensors.noRate;
  const hz = rateHz.toFixed(0);
  return nominalRateHz === null
    ? t.sensors.rateOnly(hz)
    : t.sensors.rate(hz, nominalRateHz.toFixed(0));
}

const ageText = (ms: number): string =>
  t.sensors.age(ms < 1000 ? `${ms.toFixed(0)} ms` : `${(ms / 1000).toFixed(0)} s`);

/** What is known of a sensor's link, in words with units. */
export const sensorFacts = (sensor: SensorView): readonly string[] =>
  [
    rateText(sensor),
    sensor.lostPct === null ? null : t.sensors.lost(t.decimal(sensor.lostPct, 1)),
    sensor.ageMs === null || sensor.state === 'ended' ? null : ageText(sensor.ageMs),
    sensor.batteryPct === null ? null : t.sensors.battery(sensor.batteryPct),
  ].filter((fact) => fact !== null);

function Sensor({ sensor, lost }: { readonly sensor: SensorView; readonly lost: boolean }) {
  const well = isWell(sensor) && !lost;
  return (
    <li class={well ? 'sensor sensor-well' : 'sensor sensor-ill'}>
      <span class="sensor-dot" aria-hidden="true" />
      <strong>{t.sensors[sensor.sensor]}</strong>
      <span class="sensor-name">{sensor.name}</span>
      <span class="sensor-state">{lost ? t.connection.sensor : t.sensors.state[sensor.state]}</span>
      {!lost && <span class="sensor-numbers">{sensorFacts(sensor).join(' · ')}</span>}
      {sensor.reason !== null && !well && !lost && (
        <span class="sensor-reason">{t.said.link(sensor.reason)}</span>
      )}
    </li>
  );
}

/** One thin line: each sensor's state in words and numbers; of none where the service is gone. */
export function SensorLine() {
  const sensors = useSection('sensors') ?? [];
  const lost = useFeedPart(({ connection }) => connection === 'lost');
  return (
    <section class="sensor-line" aria-label={t.sensors.title}>
      {sensors.length === 0 ? (
        <p class="fine">{t.sensors.none}</p>
      ) : (
        <ul>
          {sensors.map((sensor) => (
            <Sensor key={sensor.sensor} sensor={sensor} lost={lost} />
          ))}
        </ul>
      )}
    </section>
  );
}
