import { useEffect, useState } from 'preact/hooks';
import type { CommandReply, DeskCommand, DeskView } from '../../streaming/contract.ts';
import { useFeed, useFeedPart } from '../feed/hooks.ts';
import { t } from '../strings/strings.ts';

export interface Desk {
  /** `null` before the first answer, and while the service is not there. */
  readonly view: DeskView | null;
  /** The service answered that it has no desk. */
  readonly absent: boolean;
  /** What went wrong last, in words; `null` where nothing did. */
  readonly error: string | null;
  send(command: DeskCommand): void;
}

/** A sensor that gives no name goes by the end of its address. */
const named = (view: DeskView): DeskView => ({
  ...view,
  sensors: view.sensors.map((s) =>
    s.name === s.id ? { ...s, name: t.desk.unnamed(s.id.slice(-4)) } : s,
  ),
});

/** An unanswered opening means a service without a desk. */
const isAbsent = (reply: CommandReply): boolean => !reply.ok && reply.error === '';

/** Opens the desk while the page is shown, and again after each reconnect. */
export function useDesk(): Desk {
  const feed = useFeed();
  const live = useFeedPart(({ connection }) => connection === 'live');
  const [view, setView] = useState<DeskView | null>(null);
  const [absent, setAbsent] = useState(false);
  const [error, setError] = useState<string | null>(null);
  useEffect(() => feed.onDesk((view) => setView(named(view))), [feed]);
  useEffect(() => {
    if (!live) return;
    void feed.sendDesk({ type: 'open' }).then((reply) => setAbsent(isAbsent(reply)));
    return () => void feed.sendDesk({ type: 'close' });
  }, [feed, live]);
  const send = (command: DeskCommand): void =>
    void feed
      .sendDesk(command)
      .then((reply) => setError(reply.ok ? null : t.said.refusal(reply.error) || t.error.noAnswer));
  // What was last heard of a service that is not there would pass for now.
  return { view: live ? view : null, absent, error, send };
}
