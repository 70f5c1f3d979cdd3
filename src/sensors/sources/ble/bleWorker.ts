// Main of the radio's own process: noble cannot be closed again, and its native part may take the process down with it.
import { Central } from './central.ts';
import { loadNoble } from './loadNoble.ts';
import { type FromRadio, monotonicMs, type ToRadio } from './messages.ts';
import type { Noble } from './nobleApi.ts';
import { problemOf } from './problem.ts';
import { takeRadioLock } from './radioLock.ts';
import { detailOf } from './linkError.ts';

const send = (message: FromRadio): void => {
  if (process.connected) process.send?.(message);
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
  const noble = open();
  const central = noble && new Central(noble, send, monotonicMs);
  process.on('message', (message: ToRadio) => central?.take(message));
  const end = async (): Promise<void> => {
    await central?.stop();
    process.exit(0);
  };
  process.on('disconnect', () => void end());
  // The service decides when to stop. noble exits on SIGINT only while its listener is the last.
  process.on('SIGINT', () => undefined);
  process.on('SIGTERM', () => void end());
}

main();
