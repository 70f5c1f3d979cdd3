import { useId } from 'preact/hooks';

/** A number as it is typed; what is wrong with it stands below. */
export function NumberField(props: {
  readonly label: string;
  /** Without words of its own in a table, whose headings say what it is. */
  readonly bare?: boolean;
  readonly unit?: string;
  readonly value: string;
  readonly set: (value: string) => void;
  readonly problem: string | null;
}) {
  const id = useId();
  return (
    <div class="number-field">
      <label for={id} class={props.bare ? 'hidden' : undefined}>
        {props.label}
      </label>
      <span>
        <input
          id={id}
          type="text"
          dir="ltr"
          inputMode="decimal"
          size={6}
          maxLength={8}
          value={props.value}
          aria-invalid={props.problem !== null}
          aria-describedby={props.problem === null ? undefined : `${id}-problem`}
          onInput={(event) => props.set(event.currentTarget.value)}
        />
        {props.unit !== undefined && ` ${props.unit}`}
      </span>
      {props.problem !== null && (
        <p id={`${id}-problem`} class="refusal">
          {props.problem}
        </p>
      )}
    </div>
  );
}
