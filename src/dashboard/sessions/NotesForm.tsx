import { useState } from 'preact/hooks';
import { LONGEST_NOTE } from '../../streaming/sessionsContract.ts';
import { DraftNote } from '../drafts/DraftNote.tsx';
import { useOwnDraft } from '../drafts/useOwnDraft.ts';
import { t } from '../strings/strings.ts';
import { RefusedAnswer } from '../review/source.ts';
import { ask, sessionPath } from './api.ts';

const RATINGS = Array.from({ length: 11 }, (_, i) => i);

type Notes = {
  readonly note: string;
  readonly painBefore: number | null;
  readonly painAfter: number | null;
};

function Pain(props: {
  readonly label: string;
  readonly value: number | null;
  readonly set: (value: number | null) => void;
}) {
  return (
    <label>
      {props.label}{' '}
      <select
        value={props.value ?? ''}
        onChange={({ currentTarget: { value } }) => props.set(value === '' ? null : Number(value))}
      >
        <option value="">{t.sessionNotes.notAsked}</option>
        {RATINGS.map((n) => (
          <option key={n} value={n}>
            {n}
          </option>
        ))}
      </select>
    </label>
  );
}

/** The note and the pain of one session, to be mended afterwards; what is refused stays typed. */
export function NotesForm(props: { readonly id: string; readonly notes: Notes }) {
  const [notes, setNotes] = useState(props.notes);
  const draft = useOwnDraft(`note of ${props.id}`, props.notes.note);
  const [said, setSaid] = useState('');
  const s = t.sessionNotes;
  const keep = (event: Event): void => {
    event.preventDefault();
    ask(`${sessionPath(props.id)}/notes`, {
      method: 'PATCH',
      headers: { 'content-type': 'application/json' },
      body: JSON.stringify({ ...notes, note: draft.value }),
    }).then(
      () => {
        draft.drop(draft.value);
        setSaid(s.kept);
      },
      (error: unknown) => setSaid(error instanceof RefusedAnswer ? error.message : s.failed),
    );
  };
  return (
    <form class="ready-column notes-form" onSubmit={keep} data-testid="notes-form">
      <h2>{s.title}</h2>
      <div class="row">
        <Pain
          label={s.painBefore}
          value={notes.painBefore}
          set={(painBefore) => setNotes({ ...notes, painBefore })}
        />
        <Pain
          label={s.painAfter}
          value={notes.painAfter}
          set={(painAfter) => setNotes({ ...notes, painAfter })}
        />
      </div>
      <label class="note">
        <span>{s.note}</span>
        <textarea
          dir="auto"
          rows={4}
          maxLength={LONGEST_NOTE}
          value={draft.value}
          onInput={({ currentTarget: { value } }) => draft.set(value)}
        />
      </label>
      <DraftNote restoredMs={draft.restoredMs} discard={() => draft.drop()} />
      <div class="row">
        <button type="submit">{s.keep}</button>
        <p role="status">{said}</p>
      </div>
    </form>
  );
}
