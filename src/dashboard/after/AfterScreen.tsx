import { useState } from 'preact/hooks';
import { DraftNote } from '../drafts/DraftNote.tsx';
import { useOwnDraft } from '../drafts/useOwnDraft.ts';
import { useSection } from '../feed/hooks.ts';
import { Warnings } from '../practice/Warnings.tsx';
import { Refusal, useAsk } from '../shell/Ask.tsx';
import { Caution } from '../shell/Caution.tsx';
import { NO_PAIN, type Pain, PainFields } from '../shell/PainFields.tsx';
import { OwnName } from '../shell/OwnName.tsx';
import { go } from '../shell/router.ts';
import { t } from '../strings/strings.ts';
import { Summary } from './Summary.tsx';

const NOTE_LENGTH = 1500;

function CloseForm() {
  const [pain, setPain] = useState(NO_PAIN);
  const practiceId = useSection('practiceId');
  const draft = useOwnDraft(`after ${practiceId}`);
  const [missing, setMissing] = useState<string | null>(null);
  const { ask, refusal } = useAsk();
  const rate = (next: Pain): void => {
    setPain(next);
    setMissing(null);
  };
  const send = (event: Event): void => {
    event.preventDefault();
    setMissing(pain.rating === null ? t.ready.pain.choose : null);
    if (pain.rating === null) return;
    void ask({
      type: 'close',
      pain: pain.rating,
      signs: pain.signs,
      note: draft.value.trim(),
    }).then((done) => done && draft.drop());
  };
  return (
    <form class="close-form" onSubmit={send}>
      <h2>{t.after.closeTitle}</h2>
      <PainFields title={t.ready.pain.after} pain={pain} set={rate} />
      <label class="note">
        <span>{t.after.note}</span>
        <textarea
          dir="auto"
          rows={3}
          maxLength={NOTE_LENGTH}
          placeholder={t.after.noteHint}
          value={draft.value}
          onInput={(event) => draft.set(event.currentTarget.value)}
        />
      </label>
      <DraftNote restoredMs={draft.restoredMs} discard={() => draft.drop()} />
      <Refusal text={missing ?? refusal} />
      <button type="submit" class="primary">
        {t.after.close}
      </button>
    </form>
  );
}

function Kept() {
  return (
    <div class="close-form" role="status">
      <h2>{t.after.kept}</h2>
      <button type="button" class="primary" onClick={() => go('today')}>
        {t.after.today}
      </button>
    </div>
  );
}

/** Pain after, a note, and what the practice was. */
export function AfterScreen() {
  const stage = useSection('stage');
  const summary = useSection('summary');
  return (
    <main id="main" class="after" tabIndex={-1}>
      <h1>{t.after.title}</h1>
      <p class="print-only">
        <OwnName />
      </p>
      <Warnings />
      <div class="after-columns">
        {summary === null ? (
          <p class="empty">{t.after.noSummary}</p>
        ) : (
          <Summary summary={summary} />
        )}
        {stage === 'after' && <CloseForm />}
        {stage === 'over' && <Kept />}
      </div>
      <Caution />
    </main>
  );
}
