import type { SensorCalibrationQuality } from '../../body/calibrationResult.ts';
import { useSection } from '../feed/hooks.ts';
import { t } from '../strings/strings.ts';
import { SwapSensors } from './SwapSensors.tsx';

function Explained(props: { readonly name: string; readonly quality: SensorCalibrationQuality }) {
  const { explained } = props.quality;
  if (explained === null) return null;
  return (
    <li>
      <strong>{props.name}</strong> {t.ready.calibrate.explained(t.decimal(100 * explained, 1))}
    </li>
  );
}

/** What came of the calibration: how good, and what to do where it was refused. */
export function CalibrationQuality() {
  const quality = useSection('calibration')?.quality ?? null;
  const part = useSection('guide')?.part;
  if (quality === null) return null;
  const s = t.ready.calibrate;
  const refused = part === 'recheck' ? t.home.moved : s.refused;
  const good = quality.problems.length === 0 ? s.quality : s.doubt;
  return (
    <section class={quality.accepted ? 'quality' : 'quality refused'} aria-live="polite">
      <h3>{quality.accepted ? good : refused}</h3>
      {quality.problems.map((problem) => (
        <p key={problem.code}>{t.said.calibration(problem)}</p>
      ))}
      {quality.problems.some(({ code }) => code === 'swapped-sensors') && <SwapSensors />}
      {quality.problems.length > 0 && (
        <ul class="fine">
          <Explained name={t.sensors.chest} quality={quality.chest} />
          <Explained name={t.sensors.trailArm} quality={quality.trailArm} />
        </ul>
      )}
    </section>
  );
}
