import { useId, useState } from 'preact/hooks';
import type { Plan } from '../../../coaching/plan.ts';
import { h } from '../../strings/hub.ts';
import { useAct } from '../parts/useAct.ts';
import { useHub } from '../shell/hub.ts';

const words = h.planChange;

/** Keeps what is written as a plan without a student. */
export function KeepTemplate({ plan }: { readonly plan: Plan | null }) {
  const { client } = useHub();
  const id = useId();
  const [name, setName] = useState('');
  const [told, setTold] = useState<string | null>(null);
  const { busy, problem, run } = useAct();
  const keep = (): void =>
    void run(async () => {
      if (plan === null) return;
      await client.students.addTemplate(name.trim(), plan);
      setTold(words.kept(name.trim()));
      setName('');
    });
  return (
    <details class="fold">
      <summary>{words.keep}</summary>
      <div class="field">
        <label for={id}>{words.keepName}</label>
        <input
          id={id}
          type="text"
          dir="auto"
          maxLength={80}
          value={name}
          onInput={(event) => setName(event.currentTarget.value)}
        />
      </div>
      <p class="row">
        <button type="button" disabled={busy || plan === null || name.trim() === ''} onClick={keep}>
          {words.keep}
        </button>
        <span role="status">{problem ?? told}</span>
      </p>
    </details>
  );
}
