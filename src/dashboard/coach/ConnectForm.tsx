import { useState } from 'preact/hooks';
import { RefusedAnswer } from '../review/source.ts';
import { t } from '../strings/strings.ts';
import { type Coach, post } from './api.ts';

const words = t.coach.connect;

function Field(props: { readonly name: string; readonly label: string; readonly value?: string }) {
  const { name, label, value = '' } = props;
  return (
    <label class="field">
      {label}
      <input name={name} type="text" dir="auto" required defaultValue={value} autocomplete="off" />
    </label>
  );
}

/** Address and code; an address that is not encrypted has to be confirmed. */
export function ConnectForm({ act }: Pick<Coach, 'act'>) {
  const [plain, setPlain] = useState(false);
  const submit = (event: SubmitEvent): void => {
    event.preventDefault();
    const form = new FormData(event.currentTarget as HTMLFormElement);
    const of = (name: string): string => String(form.get(name) ?? '');
    const request = { hubUrl: of('hubUrl'), code: of('code'), machine: of('machine') };
    const confirmed = form.get('plain') === 'on' ? { plain: true } : {};
    void act(() =>
      post('connect', { ...request, ...confirmed }).catch((error: unknown) => {
        if (error instanceof RefusedAnswer && error.status === 409) setPlain(true);
        throw error;
      }),
    );
  };
  return (
    <form class="connect" onSubmit={submit}>
      <h2>{words.title}</h2>
      <Field name="hubUrl" label={words.hubUrl} value="https://" />
      <Field name="code" label={words.code} />
      <p class="fine">{words.codeWhy}</p>
      <Field name="machine" label={words.machine} value={words.machineValue} />
      {plain && (
        <label class="tick">
          <input type="checkbox" name="plain" /> {words.plain}
        </label>
      )}
      <div class="row">
        <button type="submit" class="primary">
          {words.go}
        </button>
      </div>
    </form>
  );
}
