import type { SensorView } from '../../streaming/contract.ts';
import { useFeedPart, useSection } from '../feed/hooks.ts';
import { isWell } from '../sensors/stale.ts';
import { t } from '../strings/strings.ts';

/** It sent before and does not now. */
const isSilent = (sensor: SensorView): boolean => sensor.ageMs !== null && !isWell(sensor);

/** Which sensor is silent and since when, for as long as it is; what is done meanwhile is not scored. */
export function LostSensors() {
  const lost = useFeedPart(({ connection }) => connection === 'lost');
  const silent = (useSection('sensors') ?? []).filter((sensor) => !lost && isSilent(sensor));
  return (
    <>
      {silent.map(({ sensor, ageMs }) => (
        <p key={sensor} class="notice notice-bad" role="status" data-testid="lost-sensor">
          {t.sensors.silent(t.sensors[sensor])}{' '}
          {/* only for the eye: a voice would tell every second anew */}
          <span aria-hidden="true">{t.sensors.silentFor(Math.floor((ageMs ?? 0) / 1000))}</span>
        </p>
      ))}
    </>
  );
}
