import { useState } from 'preact/hooks';
import { useSection } from '../feed/hooks.ts';
import { Refusal, useAsk } from '../shell/Ask.tsx';
import { NO_PAIN, type Pain, PainFields } from '../shell/PainFields.tsx';
import { t } from '../strings/strings.ts';

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

function RedFlags(props: { readonly checked: boolean; readonly set: (checked: boolean) => void }) {
  const s = t.ready.safety;
  return (
    <div class="confirm">
      <p>
        <strong>{s.redFlags}</strong> {s.redFlagList.join(', ')}.
      </p>
      <label>
        <input
          type="checkbox"
          checked={props.checked}
          onChange={(event) => props.set(event.currentTarget.checked)}
        />
        {s.redFlagYes}
      </label>
    </div>
  );
}

/** Club and space, history at first, warm-up, red flags and pain: before each session. */
export function SafetyStep() {
  const firstUse = useSection('person')?.firstUse ?? true;
  const [club, setClub] = useState(false);
  const [history, setHistory] = useState(false);
  const [warm, setWarm] = useState(false);
  const [redFlag, setRedFlag] = useState(false);
  const [pain, setPain] = useState(NO_PAIN);
  const [missing, setMissing] = useState<string | null>(null);
  const { ask, refusal } = useAsk();
  const s = t.ready.safety;
  const rate = (next: Pain): void => {
    setPain(next);
    setMissing(null);
  };
  const send = (event: Event): void => {
    event.preventDefault();
    setMissing(pain.rating === null ? t.ready.pain.choose : null);
    if (pain.rating === null) return;
    const answers = {
      clubConfirmed: club,
      historyConfirmed: history || !firstUse,
      warmedUp: warm,
      redFlag,
      pain: pain.rating,
      signs: pain.signs,
    };
    void ask({ type: 'safety', answers });
  };
  return (
    <form class="ready-form" onSubmit={send}>
      <h2 tabIndex={-1}>{s.title}</h2>
      <div class="ready-columns">
        <div class="ready-column">
          <Confirm text={s.club} label={s.clubConfirm} checked={club} set={setClub} />
          {firstUse && (
            <Confirm text={s.history} label={s.historyConfirm} checked={history} set={setHistory} />
          )}
          <Confirm text={s.warmUp} label={s.warmUpConfirm} checked={warm} set={setWarm} />
        </div>
        <div class="ready-column">
          <RedFlags checked={redFlag} set={setRedFlag} />
          <PainFields title={t.ready.pain.now} pain={pain} set={rate} />
          <Refusal text={missing ?? refusal} />
          <button type="submit" class="primary">
            {s.start}
          </button>
        </div>
      </div>
    </form>
  );
}
