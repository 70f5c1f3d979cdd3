import { useId, useState } from 'preact/hooks';
import { Dialog } from '../../shell/Dialog.tsx';
import { h } from '../../strings/hub.ts';
import { Form } from '../parts/Field.tsx';
import { useAct } from '../parts/useAct.ts';
import { useHub } from '../shell/hub.ts';

const words = h.needs.pain;

function Ask(props: {
  readonly studentId: string;
  readonly name: string;
  readonly sessionId: string;
  readonly close: (done: boolean) => void;
}) {
  const { client } = useHub();
  const [reason, setReason] = useState('');
  const id = useId();
  const { busy, problem, run } = useAct();
  const { studentId, sessionId } = props;
  const send = (): void =>
    void run(() => client.students.closePain(studentId, { sessionId, reason })).then(
      (done) => done && props.close(true),
    );
  return (
    <Dialog title={words.title(props.name)} onClose={() => props.close(false)}>
      <Form
        go={words.go}
        send={send}
        busy={busy}
        problem={problem}
        cancel={() => props.close(false)}
      >
        <p>{words.why}</p>
        <p class="field">
          <label for={id}>{words.reason}</label>
          <textarea
            dir="auto"
            id={id}
            rows={3}
            required
            maxLength={1000}
            value={reason}
            autofocus
            onInput={(event) => setReason(event.currentTarget.value)}
          />
        </p>
      </Form>
    </Dialog>
  );
}

/** Open pain of a student is closed with a reason; it can be opened again on the student's page. */
export function ClosePain(props: {
  readonly studentId: string;
  readonly name: string;
  /** The session that the pain is shown with. */
  readonly sessionId: string;
  readonly again: () => void;
}) {
  const [asking, setAsking] = useState(false);
  return (
    <>
      <button type="button" onClick={() => setAsking(true)}>
        {words.close}
      </button>
      {asking && (
        <Ask
          {...props}
          close={(done) => {
            setAsking(false);
            if (done) props.again();
          }}
        />
      )}
    </>
  );
}
