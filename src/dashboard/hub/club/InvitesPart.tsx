import { useCallback } from 'preact/hooks';
import type { Invite } from '../../../streaming/hubContract/people.ts';
import { useAnswer } from '../../review/useAnswer.ts';
import { h } from '../../strings/hub.ts';
import { Asked } from '../parts/Asked.tsx';
import { useAct } from '../parts/useAct.ts';
import { useHub } from '../shell/hub.ts';

const words = h.club.invites;

function stateOf({ usedMs, expiresMs }: Invite, nowMs: number): string {
  if (usedMs !== null) return words.used(usedMs, nowMs);
  return expiresMs <= nowMs ? words.expired : words.expires(expiresMs);
}

function Line({ invite, again }: { readonly invite: Invite; readonly again: () => void }) {
  const { client } = useHub();
  const { busy, problem, run } = useAct();
  const drop = (): void =>
    void run(async () => {
      await client.people.dropInvite(invite.id);
      again();
    });
  return (
    <li>
      <span>
        <b>{words.line(invite.name, words.role[invite.role])}</b> {stateOf(invite, Date.now())}
        {problem !== null && <span role="alert"> {problem}</span>}
      </span>
      {invite.usedMs === null && (
        <button
          type="button"
          class="quiet"
          disabled={busy}
          aria-label={words.dropOf(invite.name)}
          onClick={drop}
        >
          {words.drop}
        </button>
      )}
    </li>
  );
}

/** Own invitations, open or used. */
export function InvitesPart() {
  const { client } = useHub();
  const answer = useAnswer(useCallback(() => client.people.invites(), [client]));
  return (
    <section class="part">
      <h2>{words.title}</h2>
      <Asked of={answer}>
        {(invites) =>
          invites.length === 0 ? (
            <p class="empty">{words.none}</p>
          ) : (
            <ul class="lines">
              {invites.map((invite) => (
                <Line key={invite.id} invite={invite} again={answer.again} />
              ))}
            </ul>
          )
        }
      </Asked>
    </section>
  );
}
