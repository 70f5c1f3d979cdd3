import { useCallback, useState } from 'preact/hooks';
import type { StudentView } from '../../../streaming/hubContract/students.ts';
import { h } from '../../strings/hub.ts';
import { t } from '../../strings/strings.ts';
import { Asked } from '../parts/Asked.tsx';
import { HubPage } from '../parts/HubPage.tsx';
import { useHub } from '../shell/hub.ts';
import { useKeys } from '../shell/keys.ts';
import { useLive } from '../parts/useLive.ts';
import { goTo, to } from '../shell/router.ts';
import { DataPart } from './DataPart.tsx';
import { EditDialog } from './EditDialog.tsx';
import { LessonsPart } from './LessonsPart.tsx';
import { MachinesPart } from './MachinesPart.tsx';
import { MonthsPart } from './MonthsPart.tsx';
import { NeedsPart, PainHistory } from './NeedsPart.tsx';
import { PlansPart } from './PlansPart.tsx';
import { SessionsPart } from './SessionsPart.tsx';

const words = h.student;

function Facts({ s, edit }: { readonly s: StudentView; readonly edit: () => void }) {
  return (
    <p>
      {words.facts(t.sessions.hand[s.hand], s.joinedMs)} ·{' '}
      {s.paired ? words.paired(s.lastContactMs, Date.now()) : words.notPaired}{' '}
      <button type="button" class="link" onClick={edit}>
        {words.edit.open}
      </button>
    </p>
  );
}

function Actions({ s }: { readonly s: StudentView }) {
  return (
    <p class="row">
      <a class="button" href={to('students', s.id, 'plan')}>
        {words.changePlan}
      </a>
      <a class="button" href={to('students', s.id, 'report')}>
        {words.report}
      </a>
      <a class="button" href={to('students', s.id, 'compare')}>
        {words.compare}
      </a>
    </p>
  );
}

/** The next session of this student that nobody looked at. */
function ReviewNext({ s }: { readonly s: StudentView }) {
  const next = s.nextSessionId;
  useKeys({ n: () => next !== null && goTo(to('sessions', next)), g: () => goTo(to('home')) });
  return next === null ? null : (
    <p>
      <a class="button primary" href={to('sessions', next)}>
        {words.review(s.unreviewed)} <kbd>N</kbd>
      </a>
    </p>
  );
}

function Parts({ s, again }: { readonly s: StudentView; readonly again: () => void }) {
  return (
    <>
      <SessionsPart studentId={s.id} />
      <PlansPart s={s} />
      <MonthsPart studentId={s.id} />
      <PainHistory s={s} again={again} />
      <LessonsPart s={s} again={again} />
      <MachinesPart studentId={s.id} />
      <DataPart s={s} />
    </>
  );
}

/** One student: why a look is needed, months, sessions, plans, lessons, computers and data. */
export function StudentPage({ id }: { readonly id: string }) {
  const { client } = useHub();
  const answer = useLive(useCallback(() => client.students.student(id), [client, id]));
  const [editing, setEditing] = useState(false);
  return (
    <HubPage
      title={answer.data?.name ?? h.needs.list}
      above={<a href={to('home')}>{words.back}</a>}
    >
      <Asked of={answer}>
        {(s) => (
          <>
            <Facts s={s} edit={() => setEditing(true)} />
            <NeedsPart s={s} again={answer.again} />
            <ReviewNext s={s} />
            <Actions s={s} />
            <Parts s={s} again={answer.again} />
            {editing && (
              <EditDialog
                s={s}
                close={() => {
                  setEditing(false);
                  answer.again();
                }}
              />
            )}
          </>
        )}
      </Asked>
    </HubPage>
  );
}
