import { useCallback, useState } from 'preact/hooks';
import type { CoachRow } from '../../../streaming/hubContract/people.ts';
import { useAnswer } from '../../review/useAnswer.ts';
import { Dialog } from '../../shell/Dialog.tsx';
import { h } from '../../strings/hub.ts';
import { InviteDialog } from '../needs/InviteStudent.tsx';
import { Asked } from '../parts/Asked.tsx';
import { Form } from '../parts/Field.tsx';
import { HubPage } from '../parts/HubPage.tsx';
import { useAct } from '../parts/useAct.ts';
import { useHub } from '../shell/hub.ts';
import { LogPart } from './LogPart.tsx';
import { FailedPart } from './FailedPart.tsx';
import { InvitesPart } from './InvitesPart.tsx';
import { MovePart } from './MovePart.tsx';
import { Own } from '../../shell/Own.tsx';

const words = h.club;

function LockDialog(props: {
  readonly coach: CoachRow;
  readonly again: () => void;
  readonly close: () => void;
}) {
  const { coach, again, close } = props;
  const { client } = useHub();
  const { busy, problem, run } = useAct();
  const send = (): void =>
    void run(() => client.people.changeCoach(coach.id, { active: false })).then((done) => {
      if (!done) return;
      again();
      close();
    });
  return (
    <Dialog title={words.deactivateTitle(coach.name)} onClose={close}>
      <Form go={words.deactivate} send={send} busy={busy} problem={problem} cancel={close} small>
        <p>{words.deactivateWhy}</p>
      </Form>
    </Dialog>
  );
}

function Coach({ coach, again }: { readonly coach: CoachRow; readonly again: () => void }) {
  const { client, me } = useHub();
  const [locking, setLocking] = useState(false);
  const { busy, problem, run } = useAct();
  const letIn = (): void =>
    void run(async () => {
      await client.people.changeCoach(coach.id, { active: true });
      again();
    });
  return (
    <li>
      <span>
        <b>
          <Own>{coach.name}</Own>
        </b>{' '}
        {coach.role === 'owner' && `${words.owner} · `}
        {words.students(coach.students)}
        {!coach.active && ` · ${words.left}`}
        {problem !== null && <span role="alert"> {problem}</span>}
      </span>
      {coach.id !== me.id && (
        <button
          type="button"
          class="quiet"
          disabled={busy}
          aria-label={(coach.active ? words.deactivateOf : words.activateOf)(coach.name)}
          onClick={() => (coach.active ? setLocking(true) : letIn())}
        >
          {coach.active ? words.deactivate : words.activate}
        </button>
      )}
      {locking && <LockDialog coach={coach} again={again} close={() => setLocking(false)} />}
    </li>
  );
}

function CoachesPart({
  coaches,
  again,
}: {
  readonly coaches: readonly CoachRow[];
  readonly again: () => void;
}) {
  const [inviting, setInviting] = useState(false);
  return (
    <section class="part">
      <h2>{words.coaches}</h2>
      <ul class="lines">
        {coaches.map((coach) => (
          <Coach key={coach.id} coach={coach} again={again} />
        ))}
      </ul>
      <p>
        <button type="button" onClick={() => setInviting(true)}>
          {words.invite}
        </button>
      </p>
      {inviting && (
        <InviteDialog
          role="coach"
          title={words.invite}
          close={() => {
            setInviting(false);
            again();
          }}
        />
      )}
    </section>
  );
}

/** For the owner: coaches, invitations, moving a student, and the log. */
export function ClubPage() {
  const { client, me } = useHub();
  const [round, setRound] = useState(0);
  const answer = useAnswer(useCallback(() => client.people.club(), [client]));
  const again = (): void => {
    answer.again();
    setRound((n) => n + 1);
  };
  return (
    <HubPage title={words.title}>
      <p class="lead">
        <Own>{me.club.name}</Own>
      </p>
      <Asked of={answer}>
        {({ coaches }) => (
          <>
            <CoachesPart coaches={coaches} again={again} />
            <InvitesPart key={`invites ${round}`} />
            <MovePart coaches={coaches} moved={again} />
          </>
        )}
      </Asked>
      <FailedPart />
      <LogPart key={`log ${round}`} />
    </HubPage>
  );
}
