import { setTimeout as pause } from 'node:timers/promises';
import { type HubClient, HubError } from './hubClient.ts';
import { type Packed, piece } from './packing.ts';

const PIECE_BYTES = 256 * 1024;
/** Between two pieces, ms: the line and the computer belong to the practice. Choices. */
const PAUSE_MS = 10;
const PAUSE_PRACTISING_MS = 250;
/** A file that arrives otherwise than it was sent is sent anew so often. */
const MOST_ANEW = 3;

export interface UploadOptions {
  readonly practising: () => boolean;
  /** Told how much has come, bytes. */
  readonly progress: (sent: number) => void;
  readonly signal: AbortSignal;
}

/** Sends a file piece by piece from wherever the hub stands. @returns the id under which the hub had it before, or `null` */
export async function upload(
  client: HubClient,
  clientId: string,
  packed: Packed,
  options: UploadOptions,
): Promise<string | null> {
  const { bytes, sha256, path } = packed;
  let state = await client.announce(clientId, { bytes, sha256 });
  let anew = 0;
  while (!state.complete) {
    options.signal.throwIfAborted();
    options.progress(state.received);
    const part = await piece(path, state.received, PIECE_BYTES);
    try {
      state = await client.send(clientId, state.received, part);
    } catch (error) {
      const again =
        error instanceof HubError &&
        (error.code === 'offset' ||
          ((error.code === 'hash' || error.code === 'not-announced') && ++anew < MOST_ANEW));
      if (!again) throw error;
      state = await client.announce(clientId, { bytes, sha256 });
    }
    await pause(options.practising() ? PAUSE_PRACTISING_MS : PAUSE_MS, undefined, {
      signal: options.signal,
    });
  }
  return state.sameAs ?? null;
}
