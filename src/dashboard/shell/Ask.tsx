import { useState } from 'preact/hooks';
import type { Command } from '../../streaming/contract.ts';
import { useFeed } from '../feed/hooks.ts';
import { t } from '../strings/strings.ts';

/** Sends a command and keeps what was answered where it was refused. */
export function useAsk(): {
  readonly refusal: string | null;
  readonly ask: (command: Command) => Promise<boolean>;
} {
  const feed = useFeed();
  const [refusal, setRefusal] = useState<string | null>(null);
  const ask = async (command: Command): Promise<boolean> => {
    const reply = await feed.send(command);
    setRefusal(reply.ok ? null : t.said.refusal(reply.error) || t.error.noAnswer);
    return reply.ok;
  };
  return { refusal, ask };
}

export function Refusal({ text }: { readonly text: string | null }) {
  return text === null ? null : (
    <p class="refusal" role="alert">
      {text}
    </p>
  );
}
