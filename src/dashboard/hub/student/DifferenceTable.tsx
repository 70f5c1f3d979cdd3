import type { ComparisonTexts } from '../../../coaching/differenceText.ts';
import type {
  PeriodComparison,
  PeriodDifference,
} from '../../../streaming/hubContract/students.ts';
import { TableHead } from '../../shell/TableHead.tsx';
import { h } from '../../strings/hub.ts';
import { t } from '../../strings/strings.ts';
import { differenceTexts, sureOf } from './differenceTexts.ts';

const words = h.comparison;

type Side = PeriodDifference['a'];

const nameOf = ({ measure }: PeriodDifference): string =>
  measure === null ? words.all : t.measures.label(measure);

function Usual(props: {
  readonly d: PeriodDifference;
  readonly s: Side;
  readonly texts: ComparisonTexts['earlier'];
}) {
  const { d, s, texts } = props;
  if (!s || !texts) return <>{words.none}</>;
  return (
    <>
      {words.value(texts.median, texts.low, texts.high)}
      <small>
        {d.kind === 'carryOver' ? words.ofSessions(s.sessions) : words.of(s.sessions, s.count)}
      </small>
    </>
  );
}

/** How a difference may be read. */
export function readingOf(d: PeriodDifference): 'notBoth' | 'tooFew' | 'unsure' | 'small' | 'sure' {
  if (d.difference === null) return 'notBoth';
  const { interval, value } = d.difference;
  if (interval === null) return 'tooFew';
  if (interval.low <= 0 && interval.high >= 0) return 'unsure';
  return Math.abs(value) < (sureOf(d) ?? 0) ? 'small' : 'sure';
}

function DifferenceCell({ d, texts }: { readonly d: PeriodDifference; texts: ComparisonTexts }) {
  const { difference, interval } = texts;
  if (difference === null) return <>–</>;
  return (
    <>
      <b>{difference}</b>
      {interval !== null && <small>{words.interval(interval.low, interval.high)}</small>}
      <Picture d={d} />
    </>
  );
}

/** Where the difference and its likely range lie about zero. */
function Picture({ d }: { readonly d: PeriodDifference }) {
  if (!d.difference?.interval) return null;
  const { value, interval } = d.difference;
  const { low, high } = interval;
  const sure = sureOf(d) ?? 0;
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
function Overlay({ d: { a, b } }: { readonly d: PeriodDifference }) {
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

function Row({ d }: { readonly d: PeriodDifference }) {
  const reading = readingOf(d);
  const texts = differenceTexts(d);
  const { columns } = words;
  return (
    <tr data-reading={reading}>
      <th scope="row">{nameOf(d)}</th>
      <td data-label={columns.difference}>
        <DifferenceCell d={d} texts={texts} />
      </td>
      <td class="reading" data-label={columns.reading}>
        {words[reading]}
      </td>
      <td data-label={columns.a}>
        <Usual d={d} s={d.a} texts={texts.earlier} />
      </td>
      <td data-label={columns.b}>
        <Usual d={d} s={d.b} texts={texts.later} />
      </td>
      <td class="both-on-one">
        <Overlay d={d} />
      </td>
    </tr>
  );
}

const KINDS = ['passed', 'rehearsals', 'balls', 'carryOver'] as const;

/** Everything that is compared: the difference and how to read it first. */
export function DifferenceTable({ compared }: { readonly compared: PeriodComparison }) {
  return (
    <>
      {KINDS.map((kind) => {
        const rows = compared.differences.filter((d) => d.kind === kind);
        return rows.length === 0 ? null : (
          <section key={kind}>
            <h2>{words.kinds[kind]}</h2>
            <div class="table-scroll" tabIndex={0} role="region" aria-label={words.kinds[kind]}>
              <table class="difference-table">
                <TableHead columns={words.columns} />
                <tbody>
                  {rows.map((d) => (
                    <Row key={d.measure ?? 'all'} d={d} />
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
