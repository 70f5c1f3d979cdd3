import { useState } from 'preact/hooks';
import type { Me, SetupRequest } from '../../../streaming/hubContract/people.ts';
import { h } from '../../strings/hub.ts';
import type { HubClient } from '../client/client.ts';
import { Field, Form, PasswordField } from '../parts/Field.tsx';
import { HubPage } from '../parts/HubPage.tsx';
import { useAct } from '../parts/useAct.ts';

const words = h.entry;
const NOTHING: SetupRequest = { code: '', clubName: '', name: '', login: '', password: '' };

/** The first coach makes the club. */
export function SetupPage(props: { readonly client: HubClient; readonly enter: (me: Me) => void }) {
  const [asked, setAsked] = useState(NOTHING);
  const { busy, problem, run } = useAct();
  const set = (change: Partial<SetupRequest>): void => setAsked((old) => ({ ...old, ...change }));
  const send = (): void =>
    void run(async () => props.enter(await props.client.people.setUp(asked)));
  return (
    <HubPage title={words.setup.title} narrow>
      <p class="lead">{words.setup.lead}</p>
      <Form go={words.setup.go} send={send} busy={busy} problem={problem}>
        <Field
          label={words.setup.code}
          why={words.setup.codeWhy}
          value={asked.code}
          set={(code) => set({ code })}
          maxLength={40}
          autofocus
        />
        <Field
          label={words.clubName}
          value={asked.clubName}
          set={(clubName) => set({ clubName })}
          maxLength={80}
        />
        <OwnFields asked={asked} set={set} why={words.nameWhy.coach} />
      </Form>
    </HubPage>
  );
}

interface Own {
  readonly name: string;
  readonly login: string;
  readonly password: string;
}

/** Name, sign-in name and password of a new account. */
export function OwnFields(props: {
  readonly asked: Own;
  /** Who sees the name. */
  readonly why: string;
  readonly set: (change: Partial<Own>) => void;
}) {
  const { asked, set } = props;
  return (
    <>
      <Field
        label={words.name}
        why={props.why}
        value={asked.name}
        set={(name) => set({ name })}
        maxLength={80}
        autocomplete="name"
      />
      <Field
        label={words.login}
        why={words.loginWhy}
        value={asked.login}
        set={(login) => set({ login })}
        maxLength={60}
        autocomplete="username"
      />
      <PasswordField
        label={words.password}
        why={words.passwordWhy}
        value={asked.password}
        set={(password) => set({ password })}
        autocomplete="new-password"
      />
    </>
  );
}
