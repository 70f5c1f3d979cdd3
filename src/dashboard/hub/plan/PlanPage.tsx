import { HubPage } from '../parts/HubPage.tsx';
import { h } from '../../strings/hub.ts';

/** The plan of one student, to be changed. */
export function PlanPage({ id }: { readonly id: string }) {
  return (
    <HubPage title={h.student.changePlan}>
      <p>{id}</p>
    </HubPage>
  );
}
