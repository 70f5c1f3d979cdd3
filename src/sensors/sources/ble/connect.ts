import type { Driver } from './drivers/driver.ts';
import { LinkError, linkError } from './linkError.ts';
import type { NoblePeripheral } from './nobleApi.ts';
import { sleep, within } from './within.ts';

const CONNECT_MS = 10_000;
const LATE_MS = 1500;
/** A link to a sensor that is off ends with the supervision time. */
const DISCONNECT_MS = 4500;

/** The default supervision timeout of 420 ms ends links at every short shadow; 4 s do not. */
const parameters = ({ interval }: Driver) => ({
  minInterval: interval.min,
  maxInterval: interval.max,
  latency: 0,
  timeout: 400,
});

/** Asks for the end of a link and waits for it, but not for ever. @returns whether the end was confirmed */
export async function disconnect(peripheral: NoblePeripheral): Promise<boolean> {
  try {
    await within(peripheral.disconnectAsync(), DISCONNECT_MS, 'disconnected');
    return true;
  } catch {
    return false;
  }
}

/** A cancelled connect is answered late; a new one before that would take the old one's answer. */
async function cancel(peripheral: NoblePeripheral): Promise<void> {
  peripheral.cancelConnect();
  let connected = false;
  const late = new Promise<void>((resolve) => {
    peripheral.once('connect', (error?: unknown) => {
      connected = !error;
      resolve();
    });
  });
  await Promise.race([late, sleep(LATE_MS)]);
  if (connected) await disconnect(peripheral);
}

/** Connects or throws a {@link LinkError}; never hangs, never leaves a request pending. */
export async function connect(
  peripheral: NoblePeripheral,
  driver: Driver,
  signal: AbortSignal,
): Promise<void> {
  try {
    const attempt = peripheral.connectAsync(parameters(driver));
    await within(attempt, CONNECT_MS, 'connect-timeout', signal);
  } catch (error) {
    if (error instanceof LinkError) await cancel(peripheral);
    throw linkError(error, 'connect-refused');
  }
}
