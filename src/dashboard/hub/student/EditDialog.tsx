import { useState } from 'preact/hooks';
import type { StudentView } from '../../../streaming/hubContract/students.ts';
import { Dialog } from '../../shell/Dialog.tsx';
import { h } from '../../strings/hub.ts';
import { HandField } from '../entry/HandField.tsx';
import { Field, Form } from '../parts/Field.tsx';
import { useAct } from '../parts/useAct.ts';
import { useHub } from '../shell/hub.ts';

const words = h.student.edit;

/** The student's name and hand. */
export function EditDialog({ s, close }: { readonly s: StudentView; readonly close: () => void }) {
  const { client } = useHub();
  const [name, setName] = useState(s.name);
  const [hand, setHand] = useState(s.hand);
  const { busy, problem, run } = useAct();
  const send = (): void =>
    void run(() => client.students.changeStudent(s.id, { name, hand })).then(
      (done) => done && close(),
    );
  return (
    <Dialog title={words.title} onClose={close}>
      <Form go={words.go} send={send} busy={busy} problem={problem} cancel={close}>
        <Field label={words.name} value={name} set={setName} maxLength={80} autofocus />
        <HandField hand={hand} set={setHand} />
      </Form>
    </Dialog>
  );
}
