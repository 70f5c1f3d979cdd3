import type { Inbox } from '../streaming/hubContract/machine.ts';
import type { LinkFile } from './linkFile.ts';
import { type HubClient, HubError, type InboxAsked } from './hubClient.ts';

/**
 * Fetches what the coach has written and planned, and tells the hub that the plan has come.
 * @returns the name of what is here now
 */
export async function fetchInbox(
  client: HubClient,
  file: LinkFile,
  now: () => number,
  asked: InboxAsked = { have: null },
): Promise<string | null> {
  const fetched = await client.inbox(asked);
  if (fetched === null) {
    file.change({ lastContactMs: now() });
    return asked.have;
  }
  const { inbox, name } = fetched;
  file.change({ inbox, lastContactMs: now() });
  await tellPlanSeen(client, file, inbox);
  return name;
}

async function tellPlanSeen(client: HubClient, file: LinkFile, inbox: Inbox): Promise<void> {
  const { planSeen } = file.read();
  if (inbox.plan === null || inbox.plan.id === planSeen) return;
  await client.planSeen(inbox.plan.id);
  file.change({ planSeen: inbox.plan.id });
}

/** Sends the answers that wait. @returns why one could not be given, or `null` */
export async function sendOutbox(client: HubClient, file: LinkFile): Promise<string | null> {
  let why: string | null = null;
  for (const { atMs, ...comment } of file.read().outbox) {
    void atMs;
    try {
      await client.comment(comment);
    } catch (error) {
      if (!(error instanceof HubError) || error.passing || error.status === 401) throw error;
      // Its session is still on the way, or the hub will never have it.
      if (error.code === 'not-sent') continue;
      why = `Your reply was refused: ${error.message}`;
    }
    file.change({ outbox: file.read().outbox.filter(({ id }) => id !== comment.id) });
  }
  return why;
}
