import { useEffect, useRef, useState } from 'preact/hooks';
import { Refusal } from '../shell/Ask.tsx';
import { LanguagePart } from '../shell/LanguagePart.tsx';
import { LookPart } from '../shell/LookPart.tsx';
import { Mark } from '../shell/Mark.tsx';
import { t } from '../strings/strings.ts';
import { tryCode } from './door.ts';
import type { Place } from './place.ts';

const words = t.secondScreen.pair;

/** The six digits; what was typed stays until it was right. */
function CodeForm({ onPaired }: { readonly onPaired: () => void }) {
  const input = useRef<HTMLInputElement>(null);
  const [problem, setProblem] = useState<string | null>(null);
  useEffect(() => input.current?.focus(), []);
  const send = async (): Promise<void> => {
    const refusal = await tryCode(input.current?.value ?? '');
    if (refusal === null) return onPaired();
    setProblem(refusal === 'unreachable' ? words.unreachable : words.refused[refusal]);
    input.current?.select();
  };
  return (
    <form
      onSubmit={(event) => {
        event.preventDefault();
        void send();
      }}
    >
      <label>
        {words.code}
        <input
          ref={input}
          name="code"
          inputMode="numeric"
          autocomplete="one-time-code"
          required
          maxLength={9}
        />
      </label>
      <Refusal text={problem} />
      <button type="submit" class="primary">
        {words.go}
      </button>
    </form>
  );
}

/** Before this screen is let in. */
export function PairForm(props: {
  readonly place: Place;
  readonly reachable: boolean;
  readonly onPaired: () => void;
}) {
  const { place, reachable, onPaired } = props;
  return (
    <main id="main" class="pair">
      <Mark />
      <h1>{words.title}</h1>
      {place === 'ended' && <p role="status">{words.ended}</p>}
      {!reachable && <p role="status">{words.unreachable}</p>}
      {place === 'looking' && reachable && <p role="status">{words.looking}</p>}
      {place !== 'looking' && (
        <>
          <p>{words.lead}</p>
          <CodeForm onPaired={onPaired} />
        </>
      )}
      <LanguagePart />
      <LookPart />
      <p class="fine">
        <strong>{t.caution.short}</strong> {t.caution.rest}
      </p>
    </main>
  );
}
