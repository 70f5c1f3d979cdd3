import { useCallback, useState } from 'preact/hooks';
import type { Comparison, Stretch } from '../../../streaming/hubContract/students.ts';
import { useAnswer } from '../../review/useAnswer.ts';
import { h } from '../../strings/hub.ts';
import type { Stretches } from '../client/students.ts';
import { Asked } from '../parts/Asked.tsx';
import { HubPage } from '../parts/HubPage.tsx';
import { useHub } from '../shell/hub.ts';
import { to } from '../shell/router.ts';
import { DifferenceTable } from './DifferenceTable.tsx';
import { StretchChoice } from './StretchChoice.tsx';
import { presetStretches, readStretches, writeStretches } from './stretches.ts';

const words = h.comparison;

function useStretches(): readonly [Stretches, (next: Stretches) => void] {
  const [stretches, setStretches] = useState(
    () => readStretches(location.hash.split('?')[1] ?? '') ?? presetStretches('year', Date.now()),
  );
  const set = (next: Stretches): void => {
    history.replaceState(null, '', `${location.hash.split('?')[0]}?${writeStretches(next)}`);
    setStretches(next);
  };
  return [stretches, set];
}

function Counted({ name, s }: { readonly name: string; readonly s: Stretch }) {
  return (
    <div>
      <dt>
        {name}: {words.stretch(s.fromMs, s.toMs)}
      </dt>
      <dd>{words.counted(s.sessions, s.rehearsals, s.balls)}</dd>
    </div>
  );
}

function Found({ compared }: { readonly compared: Comparison }) {
  const { a, b } = compared;
  const empty = [
    ...(a.sessions === 0 ? [words.empty(words.a)] : []),
    ...(b.sessions === 0 ? [words.empty(words.b)] : []),
  ];
  return (
    <>
      <dl class="stretches">
        <Counted name={words.a} s={a} />
        <Counted name={words.b} s={b} />
      </dl>
      {empty.length > 0 ? (
        <p class="empty">{empty.join(' ')}</p>
      ) : (
        <>
          <DifferenceTable compared={compared} />
          <p class="fine">{words.note}</p>
          <p class="fine">{words.strap}</p>
        </>
      )}
    </>
  );
}

/** The sessions of two stretches of time of one student. */
export function ComparePage({ id }: { readonly id: string }) {
  const { client } = useHub();
  const student = useAnswer(useCallback(() => client.students.student(id), [client, id]));
  const [stretches, set] = useStretches();
  const answer = useAnswer(
    useCallback(() => client.students.compare(id, stretches), [client, id, stretches]),
  );
  const name = student.data?.name ?? h.needs.list;
  return (
    <HubPage title={words.title(name)} above={<a href={to('students', id)}>{name}</a>}>
      <StretchChoice stretches={stretches} set={set} />
      <Asked of={answer}>{(compared) => <Found compared={compared} />}</Asked>
    </HubPage>
  );
}
