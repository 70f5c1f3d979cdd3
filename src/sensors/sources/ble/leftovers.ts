import type { Noble } from './nobleApi.ts';

// noble's HCI binding (Linux): the adapter keeps a link when the process that made it dies, and the sensor then
// advertises no more. On other systems the operating system closes it, and these fields do not exist.
interface HciNoble {
  readonly _bindings?: {
    readonly _handles?: Readonly<Record<string, unknown>>;
    readonly _hci?: { disconnect(handle: number): void };
  };
}

const bindings = (noble: Noble): HciNoble['_bindings'] => (noble as HciNoble)._bindings;

/** The adapter's number of this sensor's link; `null` where there is none to know. */
export function handleOf(noble: Noble, id: string): number | null {
  const handle = bindings(noble)?._handles?.[id];
  return typeof handle === 'number' ? handle : null;
}

/** Closes links that a dead process left behind. */
export function hangUpAll(noble: Noble, handles: readonly number[]): void {
  for (const handle of handles) bindings(noble)?._hci?.disconnect(handle);
}
