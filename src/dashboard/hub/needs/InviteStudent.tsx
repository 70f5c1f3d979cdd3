import { useState } from 'preact/hooks';
import type { InviteRequest, NewInvite } from '../../../streaming/hubContract/people.ts';
import { Dialog } from '../../shell/Dialog.tsx';
import { h } from '../../strings/hub.ts';
import { Copied } from '../parts/Copied.tsx';
import { Field, Form } from '../parts/Field.tsx';
import { Qr } from '../../shell/Qr.tsx';
import { useAct } from '../parts/useAct.ts';
import { useHub } from '../shell/hub.ts';

const words = h.needs.invite;

function Made({ invite, done }: { readonly invite: NewInvite; readonly done: () => void }) {
  return (
    <div class="invite-made" role="status">
      <p class="lead">{words.ready(invite.name)}</p>
      {invite.reach !== 'anywhere' && (
        <div class="standing">
          <p>
            <b>{words.reach[invite.reach].what}</b>
          </p>
          <p>{words.reach[invite.reach].mend}</p>
        </div>
      )}
      <Qr rows={invite.qr} label={words.scan} />
      <Copied label={words.link} text={invite.url} />
      <p class="fine">
        {words.once} {h.entry.invitation.expires(invite.expiresMs)}
      </p>
      <p class="row">
        <button type="button" class="primary" onClick={done}>
          {words.done}
        </button>
      </p>
    </div>
  );
}

/** Makes a link for one person; it is shown once. */
export function InviteDialog(props: {
  readonly role: InviteRequest['role'];
  readonly title: string;
  /** Of somebody who is already there. */
  readonly student?: { readonly id: string; readonly name: string };
  readonly close: () => void;
}) {
  const { client } = useHub();
  const [name, setName] = useState(props.student?.name ?? '');
  const [made, setMade] = useState<NewInvite | null>(null);
  const { busy, problem, run } = useAct();
  const send = (): void =>
    void run(async () =>
      setMade(
        await client.people.invite({
          role: props.role,
          name,
          ...(props.student && { studentId: props.student.id }),
        }),
      ),
    );
  return (
    <Dialog title={props.title} onClose={props.close}>
      {made === null ? (
        <Form go={words.go} send={send} busy={busy} problem={problem} cancel={props.close}>
          <Field
            label={words.name[props.role]}
            why={words.nameWhy}
            value={name}
            set={setName}
            maxLength={80}
            autofocus
          />
        </Form>
      ) : (
        <Made invite={made} done={props.close} />
      )}
    </Dialog>
  );
}
