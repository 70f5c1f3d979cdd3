import { useCallback } from 'preact/hooks';
import { useAnswer } from '../../review/useAnswer.ts';
import { h } from '../../strings/hub.ts';
import type { HubClient } from '../client/client.ts';
import { Asked } from '../parts/Asked.tsx';
import { HubPage } from '../parts/HubPage.tsx';
import { useHub } from '../shell/hub.ts';
import { to } from '../shell/router.ts';
import { PlanForm } from './PlanForm.tsx';
import type { PlanDesk } from './desk.ts';
import { Own } from '../../shell/Own.tsx';

const words = h.planChange;

async function fetchDesk({ students }: HubClient, id: string): Promise<PlanDesk> {
  const [student, versions, templates, last] = await Promise.all([
    students.student(id),
    students.plans(id),
    students.templates(),
    students.lastValues(id),
  ]);
  return { student, versions, templates, last };
}

/** The plan of one student, to be changed. */
export function PlanPage({ id }: { readonly id: string }) {
  const { client } = useHub();
  const answer = useAnswer(useCallback(() => fetchDesk(client, id), [client, id]));
  const name = answer.data?.student.name ?? h.needs.list;
  return (
    <HubPage
      title={words.title(name)}
      above={
        <a href={to('students', id)}>
          <Own>{name}</Own>
        </a>
      }
    >
      <Asked of={answer}>{(desk) => <PlanForm desk={desk} />}</Asked>
    </HubPage>
  );
}
