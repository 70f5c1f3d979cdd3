import { useCallback, useState } from 'preact/hooks';
import type { ClubStudent, CoachRow } from '../../../streaming/hubContract/people.ts';
import { useAnswer } from '../../review/useAnswer.ts';
import { h } from '../../strings/hub.ts';
import { isolated } from '../../strings/isolated.ts';
import { Asked } from '../parts/Asked.tsx';
import { Form } from '../parts/Field.tsx';
import { useAct } from '../parts/useAct.ts';
import { useHub } from '../shell/hub.ts';

const words = h.club.move;

interface Choice {
  readonly id: string;
  readonly label: string;
}

function Select(props: {
  readonly label: string;
  readonly choices: readonly Choice[];
  readonly value: string;
  readonly set: (id: string) => void;
}) {
  return (
    <label class="field">
      <span>{props.label}</span>
      <select
        required
        value={props.value}
        onChange={(event) => props.set(event.currentTarget.value)}
      >
        <option value="">–</option>
        {props.choices.map(({ id, label }) => (
          <option key={id} value={id}>
            {isolated(label)}
          </option>
        ))}
      </select>
    </label>
  );
}

function MoveForm(props: {
  readonly students: readonly ClubStudent[];
  readonly coaches: readonly CoachRow[];
  readonly moved: () => void;
}) {
  const { students, coaches, moved } = props;
  const { client } = useHub();
  const [studentId, setStudent] = useState('');
  const [coachId, setCoach] = useState('');
  const [told, setTold] = useState<string | null>(null);
  const { busy, problem, run } = useAct();
  const student = students.find(({ id }) => id === studentId);
  const others = coaches.filter(({ id, active }) => active && id !== student?.coachId);
  const nameOf = (id: string | null): string => coaches.find((c) => c.id === id)?.name ?? '–';
  const send = (): void =>
    void run(async () => {
      await client.people.moveStudent(studentId, coachId);
      setTold(words.done(student?.name ?? '', nameOf(coachId)));
      setStudent('');
      moved();
    });
  return (
    <Form go={words.go} send={send} busy={busy} problem={problem} small>
      <p class="fine">{words.why}</p>
      <div class="side-by-side even">
        <Select
          label={words.student}
          value={studentId}
          set={setStudent}
          choices={students.map((s) => ({ id: s.id, label: words.of(s.name, nameOf(s.coachId)) }))}
        />
        <Select
          label={words.coach}
          value={coachId}
          set={setCoach}
          choices={others.map(({ id, name }) => ({ id, label: name }))}
        />
      </div>
      <p role="status">{told}</p>
    </Form>
  );
}

/** Gives a student to another coach. */
export function MovePart(props: {
  readonly coaches: readonly CoachRow[];
  readonly moved: () => void;
}) {
  const { client } = useHub();
  const answer = useAnswer(useCallback(() => client.people.clubStudents(), [client]));
  const moved = (): void => {
    answer.again();
    props.moved();
  };
  return (
    <section class="part">
      <h2>{words.title}</h2>
      <Asked of={answer}>
        {(students) =>
          students.length === 0 ? (
            <p class="empty">{words.none}</p>
          ) : (
            <MoveForm students={students} coaches={props.coaches} moved={moved} />
          )
        }
      </Asked>
    </section>
  );
}
