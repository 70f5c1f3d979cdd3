import type { ComponentChildren } from 'preact';
import { useId, useState } from 'preact/hooks';
import { h } from '../../strings/hub.ts';

interface FieldProps {
  readonly label: string;
  readonly value: string;
  readonly set: (value: string) => void;
  readonly why?: string;
  readonly maxLength?: number;
  readonly autocomplete?: string;
  readonly optional?: boolean;
  readonly autofocus?: boolean;
}

type FieldType = 'text' | 'password' | 'date';

function Input(props: FieldProps & { readonly id: string; readonly type: FieldType }) {
  const { id, type } = props;
  const all = {
    id,
    value: props.value,
    required: props.optional !== true,
    maxLength: props.maxLength ?? 200,
    autocomplete: props.autocomplete ?? 'off',
    autofocus: props.autofocus === true,
    onInput: ({ currentTarget }: { currentTarget: HTMLInputElement }) =>
      props.set(currentTarget.value),
    ...(props.why !== undefined && { 'aria-describedby': `${id}-why` }),
  };
  if (type === 'password') return <input {...all} type="password" />;
  return type === 'date' ? (
    <input {...all} type="date" />
  ) : (
    <input {...all} type="text" dir="auto" />
  );
}

/** One line of text with its name above and what it is for below. */
export function Field(props: FieldProps & { readonly type?: FieldType }) {
  const id = useId();
  return (
    <p class="field">
      <label for={id}>{props.label}</label>
      <Input {...props} id={id} type={props.type ?? 'text'} />
      {props.why !== undefined && (
        <span id={`${id}-why`} class="fine">
          {props.why}
        </span>
      )}
    </p>
  );
}

export function PasswordField(props: FieldProps) {
  const [shown, setShown] = useState(false);
  return (
    <div class="password">
      <Field {...props} type={shown ? 'text' : 'password'} />
      <label>
        <input
          type="checkbox"
          checked={shown}
          onChange={(event) => setShown(event.currentTarget.checked)}
        />
        {h.entry.showPassword}
      </label>
    </div>
  );
}

/** Several lines of text. */
export function TextField(props: FieldProps & { readonly rows?: number }) {
  const id = useId();
  return (
    <p class="field">
      <label for={id}>{props.label}</label>
      <textarea
        dir="auto"
        id={id}
        rows={props.rows ?? 4}
        value={props.value}
        required={props.optional !== true}
        maxLength={props.maxLength ?? 2000}
        onInput={(event) => props.set(event.currentTarget.value)}
      />
      {props.why !== undefined && <span class="fine">{props.why}</span>}
    </p>
  );
}

/** A form that is sent once at a time and says what was refused. */
export function Form(props: {
  readonly go: string;
  readonly send: () => void;
  readonly busy: boolean;
  readonly problem: string | null;
  readonly children: ComponentChildren;
  readonly cancel?: () => void;
  readonly small?: boolean;
}) {
  const submit = (event: Event): void => {
    event.preventDefault();
    props.send();
  };
  return (
    <form class="hub-form" onSubmit={submit}>
      {props.children}
      {props.problem !== null && (
        <p class="refusal" role="alert">
          {props.problem}
        </p>
      )}
      <p class="row">
        <button type="submit" class={props.small ? undefined : 'primary'} disabled={props.busy}>
          {props.go}
        </button>
        {props.cancel && (
          <button type="button" class="quiet" onClick={props.cancel}>
            {h.shell.cancel}
          </button>
        )}
      </p>
    </form>
  );
}
