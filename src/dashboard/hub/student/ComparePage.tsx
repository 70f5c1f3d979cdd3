import { useCallback, useState } from 'preact/hooks';
import { unknownSessions } from '../../../coaching/notCounted.ts';
import type { Period, PeriodComparison } from '../../../streaming/hubContract/students.ts';
import { useAnswer } from '../../review/useAnswer.ts';
import { h } from '../../strings/hub.ts';
import { t } from '../../strings/strings.ts';
import type { Periods } from '../client/students.ts';
import { Asked } from '../parts/Asked.tsx';
import { HubPage } from '../parts/HubPage.tsx';
import { useHub } from '../shell/hub.ts';
import { to } from '../shell/router.ts';
import { DifferenceTable } from './DifferenceTable.tsx';
import { PeriodChoice } from './PeriodChoice.tsx';
import { presetPeriods, readPeriods, unevenness, writePeriods } from './periods.ts';

const words = h.comparison;

function usePeriods(): readonly [Periods, (next: Periods) => void] {
  const [periods, setPeriods] = useState(
    () => readPeriods(location.hash.split('?')[1] ?? '') ?? presetPeriods('weeks', Date.now()),
  );
  const set = (next: Periods): void => {
    history.replaceState(null, '', `${location.hash.split('?')[0]}?${writePeriods(next)}`);
    setPeriods(next);
  };
  return [periods, set];
}

function Counted({ name, s }: { readonly name: string; readonly s: Period }) {
  return (
    <div>
      <dt>
        {name}: {words.period(s.fromMs, s.toMs)}
      </dt>
      <dd>
        {[
          words.counted(s.sessions, s.rehearsals, s.balls),
          ...t.counts.notCounted(s.notCounted),
        ].join('. ')}
      </dd>
    </div>
  );
}

const numbers = ({ planNumbers }: Period): string =>
  planNumbers.length === 0 ? words.uneven.noPlan : planNumbers.join(', ');

/** What a reader must know before the numbers. */
function unevenLines({ a, b }: PeriodComparison): readonly string[] {
  const { days, sessions, overlap } = unevenness(a, b);
  return [
    ...(days === null ? [] : [words.uneven.days(...days)]),
    ...(sessions === null ? [] : [words.uneven.sessions(...sessions)]),
    ...(overlap ? [words.uneven.overlap] : []),
    ...(numbers(a) === numbers(b) ? [] : [words.uneven.plans(numbers(a), numbers(b))]),
  ];
}

function Differences({ compared }: { readonly compared: PeriodComparison }) {
  const { together } = compared;
  return (
    <>
      {unevenLines(compared).map((line) => (
        <p key={line} class="standing">
          {line}
        </p>
      ))}
      <p>{together === 0 ? words.noneTogether : words.together(together)}</p>
      <DifferenceTable compared={compared} />
      <p class="fine">{words.strap}</p>
      <details class="fold">
        <summary>{words.howTitle}</summary>
        <p class="fine">{words.note}</p>
      </details>
    </>
  );
}

/** Why there is nothing to compare, without denying a session that is listed. */
const emptyText = (name: string, { notCounted }: Period): string =>
  unknownSessions(notCounted) + notCounted.simulated === 0
    ? words.empty(name)
    : words.noneCounted(name);

function Found({ compared }: { readonly compared: PeriodComparison }) {
  const { a, b } = compared;
  const empty = [
    ...(a.sessions === 0 ? [emptyText(words.a, a)] : []),
    ...(b.sessions === 0 ? [emptyText(words.b, b)] : []),
  ];
  return (
    <>
      <dl class="periods">
        <Counted name={words.a} s={a} />
        <Counted name={words.b} s={b} />
      </dl>
      {empty.length > 0 ? (
        <p class="empty">{empty.join(' ')}</p>
      ) : (
        <Differences compared={compared} />
      )}
    </>
  );
}

/** The sessions of two periods of one student. */
export function ComparePage({ id }: { readonly id: string }) {
  const { client } = useHub();
  const student = useAnswer(useCallback(() => client.students.student(id), [client, id]));
  const [periods, set] = usePeriods();
  const answer = useAnswer(
    useCallback(() => client.students.compare(id, periods), [client, id, periods]),
  );
  const name = student.data?.name ?? h.needs.list;
  return (
    <HubPage title={words.title(name)} above={<a href={to('students', id)}>{name}</a>}>
      <PeriodChoice periods={periods} set={set} />
      <Asked of={answer}>{(compared) => <Found compared={compared} />}</Asked>
    </HubPage>
  );
}
