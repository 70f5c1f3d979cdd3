import { useState } from 'preact/hooks';
import { h } from '../../strings/hub.ts';
import { Form, PasswordField } from '../parts/Field.tsx';
import { HubPage } from '../parts/HubPage.tsx';
import { useAct } from '../parts/useAct.ts';
import { useHub } from '../shell/hub.ts';
import { Own } from '../../shell/Own.tsx';

const words = h.entry.account;

function PasswordPart({ tell }: { readonly tell: (sentence: string) => void }) {
  const { client } = useHub();
  const [current, setCurrent] = useState('');
  const [next, setNext] = useState('');
  const { busy, problem, run } = useAct();
  const send = (): void =>
    void run(async () => {
      await client.people.changePassword({ current, next });
      setCurrent('');
      setNext('');
      tell(words.changed);
    });
  return (
    <section>
      <h2>{words.password}</h2>
      <Form go={words.change} send={send} busy={busy} problem={problem} small>
        <PasswordField
          label={words.current}
          value={current}
          set={setCurrent}
          autocomplete="current-password"
        />
        <PasswordField
          label={words.next}
          why={h.entry.passwordWhy}
          value={next}
          set={setNext}
          autocomplete="new-password"
        />
      </Form>
    </section>
  );
}

function ElsewherePart({ tell }: { readonly tell: (sentence: string) => void }) {
  const { client } = useHub();
  const { busy, problem, run } = useAct();
  const send = (): void =>
    void run(async () => {
      await client.people.signOutElsewhere();
      tell(words.outDone);
    });
  return (
    <section>
      <h2>{words.elsewhere}</h2>
      <Form go={words.out} send={send} busy={busy} problem={problem} small>
        <p>{words.elsewhereWhy}</p>
      </Form>
    </section>
  );
}

/** The own account of whoever is signed in. */
export function AccountPage() {
  const { me } = useHub();
  const [told, setTold] = useState<string | null>(null);
  return (
    <HubPage title={words.title} narrow>
      <p class="lead">
        <Own>{me.name}</Own>
      </p>
      <p>{words.facts(me.login, words.role[me.role])}</p>
      <p role="status" class="told">
        {told}
      </p>
      <PasswordPart tell={setTold} />
      <ElsewherePart tell={setTold} />
    </HubPage>
  );
}
