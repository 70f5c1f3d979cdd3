import { useState } from 'preact/hooks';
import type { NetworkAddress } from '../../streaming/secondScreenContract.ts';
import { t } from '../strings/strings.ts';
import { type SecondScreenState, secondScreenAsk } from './useSecondScreen.ts';

const words = t.secondScreen;

/** Off: in which network it is to be shown. */
export function SwitchOn(props: {
  readonly addresses: readonly NetworkAddress[];
  readonly act: SecondScreenState['act'];
}) {
  const { addresses, act } = props;
  const [wanted, setWanted] = useState<string | null>(null);
  const chosen = addresses.find((a) => a.address === wanted) ?? addresses[0];
  if (chosen === undefined)
    return (
      <section>
        <p class="refusal" role="status">
          {words.noNetwork}
        </p>
        <div class="row">
          <button type="button" onClick={() => act(secondScreenAsk.look)}>
            {words.look}
          </button>
        </div>
      </section>
    );
  return (
    <form
      onSubmit={(event) => {
        event.preventDefault();
        act(() => secondScreenAsk.on(chosen.address));
      }}
    >
      <fieldset>
        <legend>{words.choose}</legend>
        {addresses.map(({ address, card }) => (
          <label key={address}>
            <input
              type="radio"
              name="address"
              checked={address === chosen.address}
              onChange={() => setWanted(address)}
            />
            {words.card(address, card)}
          </label>
        ))}
      </fieldset>
      <div class="row">
        <button type="submit" class="primary">
          {words.switchOn}
        </button>
      </div>
    </form>
  );
}
