import type { AnalysisResult, SensorQuality } from '../../../analysis/result.ts';
import { t } from '../../strings/strings.ts';

const words = t.review.sensors;

const gapsText = (gaps: SensorQuality['gaps']): string =>
  words.gaps(
    gaps.length,
    t.decimal(
      gaps.reduce((sum, gap) => sum + gap.toS - gap.fromS, 0),
      1,
    ),
  );

function lineOf({ rateHz, lostPct, gaps, saturated, clockResidualMs }: SensorQuality): string {
  return [
    ...(rateHz === null ? [] : [words.rate(t.decimal(rateHz, 1))]),
    words.lost(t.decimal(lostPct, 1)),
    gapsText(gaps),
    ...(saturated > 0 ? [words.saturated(saturated)] : []),
    ...(clockResidualMs === null ? [] : [words.clock(t.decimal(clockResidualMs, 1))]),
  ].join(', ');
}

/** How well the sensors did over the session: what its numbers stand on. */
export function Sensors({ quality }: Pick<AnalysisResult, 'quality'>) {
  return (
    <details class="fold">
      <summary>{words.title}</summary>
      <ul class="fine sensor-quality">
        {(['chest', 'trailArm'] as const).map((sensor) => (
          <li key={sensor}>
            {t.sensors[sensor]}: {lineOf(quality[sensor])}
          </li>
        ))}
      </ul>
    </details>
  );
}
