import { useEffect } from 'preact/hooks';
import type { CoachLink } from '../../streaming/hubContract/coachLink.ts';
import { Caution } from '../shell/Caution.tsx';
import { t } from '../strings/strings.ts';
import { ConnectForm } from './ConnectForm.tsx';
import { ConsentPart } from './ConsentPart.tsx';
import { PlanPart } from './PlanPart.tsx';
import { SendingPart } from './SendingPart.tsx';
import { ThreadsPart } from './ThreadsPart.tsx';
import { type Coach, disconnect, post, useCoach } from './api.ts';

const words = t.coach;

function Connected({ link, act }: Pick<Coach, 'act'> & { readonly link: CoachLink }) {
  const { connection, problem, nextTryMs, lastContactMs } = link;
  if (connection === null) return null;
  return (
    <>
      <section>
        <p class="lead">{words.connected(connection.coach, connection.club)}</p>
        <p>{words.as(connection.student, connection.machine, connection.hubUrl)}</p>
        <p class="fine">{words.contact(lastContactMs)}</p>
        {problem !== null && (
          <p class="warned" role="status">
            {words.said(problem)} {nextTryMs !== null && words.nextTry(nextTryMs)}
          </p>
        )}
      </section>
      <ThreadsPart link={link} act={act} />
      <PlanPart inbox={link.inbox} />
      <ConsentPart link={link} act={act} />
      <SendingPart link={link} />
      <section>
        <div class="row">
          <button type="button" onClick={() => void act(disconnect)}>
            {words.disconnect}
          </button>
        </div>
        <p class="fine">{words.disconnectWhy}</p>
      </section>
    </>
  );
}

/** The connection with a coach: made, agreed to, watched, read, ended. */
export function CoachScreen() {
  const { link, problem, act } = useCoach();
  const unread = link?.unread ?? 0;
  useEffect(() => {
    if (unread > 0) void act(() => post('seen'));
  }, [unread]);
  return (
    <main id="main" class="sessions coach" tabIndex={-1}>
      <h1>{words.title}</h1>
      {problem !== null && (
        <p class="warned" role="alert">
          {words.said(problem)}
        </p>
      )}
      {link === null && <p>{words.loading}</p>}
      {link !== null && link.connection === null && (
        <>
          <p class="lead">{words.lead}</p>
          {link.problem === null ? (
            <ConnectForm act={act} />
          ) : (
            <p class="warned">{words.said(link.problem)}</p>
          )}
        </>
      )}
      {link !== null && <Connected link={link} act={act} />}
      <Caution />
    </main>
  );
}
