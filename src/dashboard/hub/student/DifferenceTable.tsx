import { MEASURE_INFO } from '../../../coaching/measureInfo.ts';
import type { Comparison, MeasureDifference } from '../../../streaming/hubContract/students.ts';
import { h } from '../../strings/hub.ts';
import { t } from '../../strings/strings.ts';

const words = h.comparison;

type Texts = ReturnType<typeof t.measures.compared>;

function Usual(props: { readonly s: MeasureDifference['a']; readonly texts: Texts['earlier'] }) {
  const { s, texts } = props;
  if (!s || !texts) return <>{words.none}</>;
  return (
    <>
      {words.value(texts.median, texts.low, texts.high)}
      <small>{words.of(s.sessions, s.count)}</small>
    </>
  );
}

/** How a difference may be read. */
export function readingOf({ measure, difference }: MeasureDifference): string {
  if (difference === null) return words.notBoth;
  const { interval } = difference;
  if (interval === null) return words.tooFew;
  if (interval.low <= 0 && interval.high >= 0) return words.unsure;
  const sure = MEASURE_INFO[measure].accuracy.plusMinus;
  return Math.abs(difference.value) < sure ? words.small : words.sure;
}

function intervalText({ difference, interval }: Texts): string {
  if (difference === null) return '–';
  return interval === null ? difference : words.interval(difference, interval.low, interval.high);
}

/** Where the difference and its likely range lie about zero. */
function Picture({ d }: { readonly d: MeasureDifference }) {
  if (!d.difference?.interval) return null;
  const { value, interval } = d.difference;
  const { low, high } = interval;
  const sure = MEASURE_INFO[d.measure].accuracy.plusMinus;
  const most = Math.max(Math.abs(low), Math.abs(high), sure) * 1.1;
  const x = (v: number): number => 60 + (v / most) * 56;
  return (
    <svg class="interval" viewBox="0 0 120 16" aria-hidden="true">
      <rect class="sure" x={x(-sure)} y="1" width={x(sure) - x(-sure)} height="14" />
      <path class="zero" d="M60 0v16" />
      <path class="range" d={`M${x(low)} 8H${x(high)}M${x(low)} 4v8M${x(high)} 4v8`} />
      <circle cx={x(value)} cy="8" r="4" />
    </svg>
  );
}

/** Both usual sessions on one axis: middle half and median, the earlier above. */
function Overlay({ d: { a, b } }: { readonly d: MeasureDifference }) {
  const both = [a, b].filter((s) => s !== null && s !== undefined);
  const low = Math.min(...both.map((s) => s.low));
  const span = Math.max(...both.map((s) => s.high)) - low;
  const x = (v: number): number => 6 + (span === 0 ? 54 : ((v - low) / span) * 108);
  return (
    <svg class="interval overlay" viewBox="0 0 120 24" aria-hidden="true">
      {[a, b].map(
        (s, i) =>
          s && (
            <g key={i} class={i === 0 ? 'earlier' : 'later'}>
              <path class="half" d={`M${x(s.low)} ${7 + 10 * i}H${x(s.high)}`} />
              <circle cx={x(s.median)} cy={7 + 10 * i} r="4" />
            </g>
          ),
      )}
    </svg>
  );
}

function Row({ d }: { readonly d: MeasureDifference }) {
  const { measure, a, b, difference } = d;
  const texts = t.measures.compared(measure, a, b, difference?.interval ?? null);
  return (
    <tr>
      <th scope="row">{t.measures.label(d.measure)}</th>
      <td>
        <Usual s={a} texts={texts.earlier} />
      </td>
      <td>
        <Usual s={b} texts={texts.later} />
      </td>
      <td>
        <Overlay d={d} />
      </td>
      <td>
        {intervalText(texts)}
        <Picture d={d} />
      </td>
      <td>{readingOf(d)}</td>
    </tr>
  );
}

/** Each measure in both stretches, rehearsals and balls apart. */
export function DifferenceTable({ compared }: { readonly compared: Comparison }) {
  return (
    <>
      {(['rehearsals', 'balls'] as const).map((kind) => {
        const rows = compared.measures.filter((d) => d.kind === kind && (d.a ?? d.b) !== null);
        return rows.length === 0 ? null : (
          <section key={kind}>
            <h2>{words.kinds[kind]}</h2>
            <div class="table-scroll" tabIndex={0} role="region" aria-label={words.kinds[kind]}>
              <table class="difference-table">
                <thead>
                  <tr>
                    {Object.values(words.columns).map((column) => (
                      <th key={column} scope="col">
                        {column}
                      </th>
                    ))}
                  </tr>
                </thead>
                <tbody>
                  {rows.map((d) => (
                    <Row key={d.measure} d={d} />
                  ))}
                </tbody>
              </table>
            </div>
          </section>
        );
      })}
    </>
  );
}
