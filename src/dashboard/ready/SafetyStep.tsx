import { useState } from 'preact/hooks';
import { useSection } from '../feed/hooks.ts';
import { Refusal, useAsk } from '../shell/Ask.tsx';
import { NO_PAIN, type Pain, PainFields } from '../shell/PainFields.tsx';
import { t } from '../strings/strings.ts';
import { Question } from './Question.tsx';

function Confirm(props: {
  readonly text: string;
  readonly label: string;
  readonly checked: boolean;
  readonly set: (checked: boolean) => void;
}) {
  return (
    <div class={props.checked ? 'confirm confirmed' : 'confirm'}>
      <p>{props.text}</p>
      <label>
        <input
          type="checkbox"
          checked={props.checked}
          onChange={(event) => props.set(event.currentTarget.checked)}
        />
        {props.label}
      </label>
    </div>
  );
}

type History = keyof typeof t.safetyForm.historyAnswers;

interface Form {
  readonly club: boolean;
  readonly warm: boolean;
  /** `null` until answered; a yes leaves this form. */
  readonly signs: 'no' | null;
  readonly history: History | null;
  readonly pain: Pain;
}

const EMPTY: Form = { club: false, warm: false, signs: null, history: null, pain: NO_PAIN };

/** What is still to be answered, in words. */
function missingIn({ signs, history, pain }: Form, firstUse: boolean): string | null {
  if (signs === null) return t.safetyForm.answerSigns;
  if (firstUse && history === null) return t.safetyForm.answerHistory;
  return pain.rating === null ? t.ready.pain.choose : null;
}

const answersOf = ({ club, warm, history, pain }: Form, firstUse: boolean, redFlag: boolean) => ({
  clubConfirmed: club,
  historyConfirmed: !firstUse || history === 'no' || history === 'asked',
  warmedUp: warm,
  redFlag,
  pain: pain.rating,
  signs: pain.signs,
});

interface Part {
  readonly form: Form;
  readonly set: (change: Partial<Form>) => void;
}

/** What must not apply: asked, never ticked. */
function Questions({ form, set, stop }: Part & { readonly stop: () => void }) {
  const firstUse = useSection('person')?.firstUse ?? true;
  const s = t.ready.safety;
  const f = t.safetyForm;
  return (
    <div class="ready-column">
      <Question<'no' | 'yes'>
        title={s.redFlags}
        answers={{ no: f.no, yes: f.yes }}
        chosen={form.signs}
        choose={(answer) => (answer === 'yes' ? stop() : set({ signs: 'no' }))}
      >
        <ul class="signs-list">
          {s.redFlagList.map((sign) => (
            <li key={sign}>{sign}</li>
          ))}
        </ul>
        <p class="fine">{f.yesStops}</p>
      </Question>
      {firstUse && (
        <Question
          title={f.historyAsk}
          answers={f.historyAnswers}
          chosen={form.history}
          choose={(history) => set({ history })}
        >
          <p>{s.history}</p>
        </Question>
      )}
    </div>
  );
}

/** Red flags and history as questions, then club and space, warm-up and pain: before each session. */
export function SafetyStep() {
  const firstUse = useSection('person')?.firstUse ?? true;
  const [form, setForm] = useState(EMPTY);
  const [missing, setMissing] = useState<string | null>(null);
  const { ask, refusal } = useAsk();
  const s = t.ready.safety;
  const set = (change: Partial<Form>): void => {
    setForm({ ...form, ...change });
    setMissing(null);
  };
  const say = (redFlag: boolean): void =>
    void ask({ type: 'safety', answers: answersOf(form, firstUse, redFlag) });
  const send = (event: Event): void => {
    event.preventDefault();
    const still = missingIn(form, firstUse);
    setMissing(still);
    if (still === null) say(false);
  };
  return (
    <form class="ready-form" onSubmit={send}>
      <h2 tabIndex={-1}>{s.title}</h2>
      <div class="ready-columns">
        <Questions form={form} set={set} stop={() => say(true)} />
        <div class="ready-column">
          <fieldset class="ready-column">
            <legend>{t.safetyForm.ready}</legend>
            <Confirm
              text={s.club}
              label={s.clubConfirm}
              checked={form.club}
              set={(club) => set({ club })}
            />
            <Confirm
              text={s.warmUp}
              label={s.warmUpConfirm}
              checked={form.warm}
              set={(warm) => set({ warm })}
            />
          </fieldset>
          <PainFields title={t.ready.pain.now} pain={form.pain} set={(pain) => set({ pain })} />
          <Refusal text={missing ?? refusal} />
          <button type="submit" class="primary">
            {s.start}
          </button>
        </div>
      </div>
    </form>
  );
}
