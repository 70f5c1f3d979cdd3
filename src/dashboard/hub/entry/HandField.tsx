import { h } from '../../strings/hub.ts';

export type Hand = 'left' | 'right';

/** The hand that somebody plays with. */
export function HandField(props: { readonly hand: Hand; readonly set: (hand: Hand) => void }) {
  return (
    <fieldset class="choice">
      <legend>{h.entry.hand.title}</legend>
      {(['right', 'left'] as const).map((side) => (
        <label key={side} class={props.hand === side ? 'chosen' : undefined}>
          <input
            type="radio"
            name="hand"
            checked={props.hand === side}
            onChange={() => props.set(side)}
          />
          {h.entry.hand[side]}
        </label>
      ))}
    </fieldset>
  );
}
