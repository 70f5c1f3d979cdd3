import { useEffect, useState } from 'preact/hooks';
import { useSection } from '../feed/hooks.ts';
import { t } from '../strings/strings.ts';
import { Refusal, useAsk } from './Ask.tsx';

const words = t.settings;
const HANDS = ['right', 'left'] as const;

function NameForm({ name }: { readonly name: string }) {
  const [typed, setTyped] = useState(name);
  const [kept, setKept] = useState(false);
  const { ask, refusal } = useAsk();
  useEffect(() => setTyped(name), [name]);
  const keep = async (event: Event): Promise<void> => {
    event.preventDefault();
    setKept(await ask({ type: 'about', name: typed }));
  };
  return (
    <form class="name-form" onSubmit={(event) => void keep(event)}>
      <label>
        <span>{words.name}</span>
        <input
          type="text"
          dir="auto"
          autocomplete="off"
          value={typed}
          onInput={(event) => {
            setTyped(event.currentTarget.value);
            setKept(false);
          }}
        />
      </label>
      <button type="submit">{words.keepName}</button>
      <Refusal text={refusal} />
      <p class="fine" role="status">
        {kept ? words.nameKept : words.nameWhy}
      </p>
    </form>
  );
}

function HandChoice({ hand }: { readonly hand: (typeof HANDS)[number] }) {
  const { ask, refusal } = useAsk();
  return (
    <>
      <div class="choices" role="radiogroup" aria-label={words.hand}>
        {HANDS.map((one) => (
          <label key={one}>
            <input
              type="radio"
              name="own-hand"
              // Drawn anew after a refusal, so that it shows what holds.
              key={`${hand} ${refusal ?? ''}`}
              checked={one === hand}
              onChange={() => void ask({ type: 'about', hand: one })}
            />
            {t.today.hands[one]}
          </label>
        ))}
      </div>
      <Refusal text={refusal} />
      <p class="fine">{words.handWhy}</p>
    </>
  );
}

/** What the student wants to be called, and which arm is the trail arm. */
export function YouPart() {
  const about = useSection('person')?.about;
  if (about === undefined) return null;
  return (
    <fieldset>
      <legend>{words.you}</legend>
      <NameForm name={about.name ?? ''} />
      <HandChoice hand={about.hand ?? 'right'} />
    </fieldset>
  );
}
