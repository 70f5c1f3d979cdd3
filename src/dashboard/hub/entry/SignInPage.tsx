import { useState } from 'preact/hooks';
import type { Me } from '../../../streaming/hubContract/people.ts';
import { h } from '../../strings/hub.ts';
import type { HubClient } from '../client/client.ts';
import { Field, Form, PasswordField } from '../parts/Field.tsx';
import { HubPage } from '../parts/HubPage.tsx';
import { useAct } from '../parts/useAct.ts';

const words = h.entry;

/** Whoever has an account; the page that was asked for follows. */
export function SignInPage(props: {
  readonly client: HubClient;
  readonly enter: (me: Me) => void;
}) {
  const [login, setLogin] = useState('');
  const [password, setPassword] = useState('');
  const { busy, problem, run } = useAct();
  const send = (): void =>
    void run(async () => props.enter(await props.client.people.signIn({ login, password })));
  return (
    <HubPage title={words.signIn.title} narrow>
      <p class="lead">{words.signIn.lead}</p>
      <Form go={words.signIn.go} send={send} busy={busy} problem={problem}>
        <Field
          label={words.login}
          value={login}
          set={setLogin}
          maxLength={60}
          autocomplete="username"
          autofocus
        />
        <PasswordField
          label={words.password}
          value={password}
          set={setPassword}
          autocomplete="current-password"
        />
      </Form>
      <p class="fine">{words.signIn.forgot}</p>
    </HubPage>
  );
}
