import { useState } from 'preact/hooks';
import type { StudentView } from '../../../streaming/hubContract/students.ts';
import { Dialog } from '../../shell/Dialog.tsx';
import { h } from '../../strings/hub.ts';
import { InviteDialog } from '../needs/InviteStudent.tsx';
import { Field, Form } from '../parts/Field.tsx';
import { useAct } from '../parts/useAct.ts';
import { useHub } from '../shell/hub.ts';
import { goTo, to } from '../shell/router.ts';

const words = h.student.data;

function DeleteDialog({ s, close }: { readonly s: StudentView; readonly close: () => void }) {
  const { client } = useHub();
  const [typed, setTyped] = useState('');
  const { busy, problem, run } = useAct();
  const send = (): void =>
    void run(() => client.students.deleteStudent(s.id, typed)).then(
      (done) => done && goTo(to('home')),
    );
  return (
    <Dialog title={words.removeTitle(s.name)} onClose={close}>
      <Form
        go={words.removeGo}
        send={send}
        busy={busy || typed.trim() !== s.name}
        problem={problem}
        cancel={close}
        small
      >
        <p>{words.removeWhy}</p>
        <Field label={words.type(s.name)} value={typed} set={setTyped} autofocus />
      </Form>
    </Dialog>
  );
}

/** Take everything, delete everything, invite again. */
export function DataPart({ s }: { readonly s: StudentView }) {
  const { client } = useHub();
  const [open, setOpen] = useState<'invite' | 'delete' | null>(null);
  const close = (): void => setOpen(null);
  return (
    <section class="part" aria-label={words.title}>
      <h2>{words.title}</h2>
      <p>
        <a href={client.students.exportAddress(s.id)} download>
          {words.export}
        </a>{' '}
        <span class="fine">{words.exportWhy}</span>
      </p>
      <p class="row">
        <button type="button" onClick={() => setOpen('invite')}>
          {words.invite}
        </button>
        <span class="fine">{words.inviteWhy}</span>
      </p>
      <p class="row">
        <button type="button" class="danger" onClick={() => setOpen('delete')}>
          {words.remove}
        </button>
      </p>
      {open === 'invite' && (
        <InviteDialog role="student" title={words.invite} student={s} close={close} />
      )}
      {open === 'delete' && <DeleteDialog s={s} close={close} />}
    </section>
  );
}
