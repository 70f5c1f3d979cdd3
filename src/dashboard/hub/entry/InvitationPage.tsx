import { useCallback, useState } from 'preact/hooks';
import type { Invitation, Me } from '../../../streaming/hubContract/people.ts';
import { useAnswer } from '../../review/useAnswer.ts';
import { h } from '../../strings/hub.ts';
import { t } from '../../strings/strings.ts';
import type { HubClient } from '../client/client.ts';
import { Form } from '../parts/Field.tsx';
import { HubPage } from '../parts/HubPage.tsx';
import { useAct } from '../parts/useAct.ts';
import { goTo, to } from '../shell/router.ts';
import { type Hand, HandField } from './HandField.tsx';
import { OwnFields } from './SetupPage.tsx';

const words = h.entry.invitation;

interface Props {
  readonly client: HubClient;
  readonly code: string;
  readonly me: Me | null;
  readonly enter: (me: Me) => void;
}

/** What a student is to know before anything is sent. */
function BeforeJoining({ agreed, set }: { agreed: boolean; set: (agreed: boolean) => void }) {
  return (
    <>
      <section class="sent">
        <h2>{words.sentTitle}</h2>
        <ul class="plain">
          {words.sent.map((line) => (
            <li key={line}>{line}</li>
          ))}
        </ul>
      </section>
      <p class="standing">
        <strong>{t.caution.short}</strong> {t.caution.rest}
      </p>
      <label class="agree">
        <input
          type="checkbox"
          required
          checked={agreed}
          onChange={(event) => set(event.currentTarget.checked)}
        />
        {words.agree}
      </label>
    </>
  );
}

function Join({ client, code, invitation, enter }: Props & { readonly invitation: Invitation }) {
  const [asked, setAsked] = useState({ name: invitation.name, login: '', password: '' });
  const [hand, setHand] = useState<Hand>('right');
  const [agreed, setAgreed] = useState(false);
  const { busy, problem, run } = useAct();
  const student = invitation.role === 'student';
  const send = (): void =>
    void run(async () => {
      enter(await client.people.accept(code, { ...asked, ...(student && { hand }) }));
      goTo(student ? to('pairing') : to('home'));
    });
  return (
    <Form go={words.go} send={send} busy={busy} problem={problem}>
      <OwnFields
        why={h.entry.nameWhy[invitation.role]}
        asked={asked}
        set={(change) => setAsked((old) => ({ ...old, ...change }))}
      />
      {student && <HandField hand={hand} set={setHand} />}
      {student && <BeforeJoining agreed={agreed} set={setAgreed} />}
    </Form>
  );
}

/** Whoever has the link of an invitation joins here. */
export function InvitationPage(props: Props) {
  const { client, code, me } = props;
  const { data, problem } = useAnswer(
    useCallback(() => client.people.invitation(code), [client, code]),
  );
  if (problem !== null)
    return (
      <HubPage title={words.gone} narrow>
        <p class="lead">{words.goneHelp}</p>
        <p>
          <a href={to('home')}>{h.entry.signIn.go}</a>
        </p>
      </HubPage>
    );
  if (data === null)
    return (
      <HubPage title={h.shell.loading} narrow>
        {null}
      </HubPage>
    );
  return (
    <HubPage title={words.title(data.club.name)} narrow>
      <p class="lead">{words[data.role](data.invitedBy)}</p>
      <p class="fine">{words.expires(data.expiresMs)}</p>
      {me !== null && <p class="notice">{words.signedIn(me.name)}</p>}
      <Join {...props} invitation={data} />
    </HubPage>
  );
}
