import { useState } from 'preact/hooks';
import type { StudentView } from '../../../streaming/hubContract/students.ts';
import { DraftNote } from '../../drafts/DraftNote.tsx';
import { h } from '../../strings/hub.ts';
import { Field, Form } from '../parts/Field.tsx';
import { dayInput, dayStart } from '../parts/days.ts';
import { useAct } from '../parts/useAct.ts';
import { useHubDraft } from '../parts/useHubDraft.ts';
import { useHub } from '../shell/hub.ts';
import { Own } from '../../shell/Own.tsx';

const words = h.student.lessons;

/** Days on which coach and student met. */
export function LessonsPart({ s, again }: { readonly s: StudentView; readonly again: () => void }) {
  const { client } = useHub();
  const [day, setDay] = useState(dayInput(Date.now()));
  const draft = useHubDraft(`lesson of ${s.id}`);
  const text = draft.value;
  const { busy, problem, run } = useAct();
  const add = (): void =>
    void run(async () => {
      await client.students.addLesson(s.id, { atMs: dayStart(day) ?? Date.now(), text });
      draft.drop();
      again();
    });
  const remove = (id: string): void =>
    void run(async () => {
      await client.students.dropLesson(id);
      again();
    });
  return (
    <section class="part" aria-label={words.title}>
      <h2>{words.title}</h2>
      {s.lessons.length === 0 && <p class="empty">{words.none}</p>}
      <ul class="lines">
        {s.lessons.map(({ id, atMs, text: about }) => (
          <li key={id}>
            <span>
              <b>{h.shell.day(atMs)}</b> <Own>{about}</Own>
            </span>
            <button
              type="button"
              class="quiet"
              aria-label={words.remove(atMs)}
              onClick={() => remove(id)}
            >
              {h.shell.remove}
            </button>
          </li>
        ))}
      </ul>
      <Form go={words.add} send={add} busy={busy} problem={problem} small>
        <div class="side-by-side">
          <Field label={words.day} type="date" value={day} set={setDay} />
          <Field label={words.about} value={text} set={draft.set} maxLength={500} />
        </div>
        <DraftNote restoredMs={draft.restoredMs} discard={() => draft.drop()} />
      </Form>
    </section>
  );
}
