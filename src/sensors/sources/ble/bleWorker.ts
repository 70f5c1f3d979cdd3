// Main of the radio's own process: noble cannot be closed again, and its native part may take the process down with it.
import { Central } from './central.ts';
import { loadNoble } from './loadNoble.ts';
import { type FromRadio, monotonicMs, type ToRadio } from './messages.ts';
import type { Noble } from './nobleApi.ts';
import { problemOf } from './problem.ts';
import { takeRadioLock } from './radioLock.ts';
import { detailOf } from './linkError.ts';

/** A service that just died is told by an event, not by an error here. */
const send = (message: FromRadio): void => {
  if (process.connected) process.send?.(message, undefined, undefined, () => undefined);
};

function open(): Noble | null {
  const other = takeRadioLock();
  if (other !== null) {
    send({ type: 'adapter', problem: 'in-use', detail: `process ${other}` });
    return null;
  }
  try {
    return loadNoble();
  } catch (error) {
    send({ type: 'adapter', problem: problemOf(error), detail: detailOf(error) });
    return null;
  }
}

function main(): void {
  // The service may have gone while this was being loaded.
  if (!process.connected) process.exit(0);
  let central: Central | null = null;
  const end = async (): Promise<void> => {
    await central?.stop();
    process.exit(0);
  };
  process.on('disconnect', () => void end());
  process.on('SIGTERM', () => void end());
  // A terminal that is closed may end the service: then this hangs up first, as at any end of it, else it goes on.
  process.on('SIGHUP', () => undefined);
  const noble = open();
  if (noble) central = new Central(noble, send, monotonicMs);
  process.on('message', (message: ToRadio) => central?.take(message));
  // The service decides when to stop. noble exits on SIGINT only while its listener is the last.
  process.on('SIGINT', () => undefined);
}

main();
