import { networkInterfaces } from 'node:os';
import type { PracticeHost } from '../practice/host.ts';
import { privateAddresses } from '../streaming/secondScreen/addresses.ts';
import { type SecondScreen, secondScreen } from '../streaming/secondScreen/service.ts';
import { listenAt } from './listen.ts';
import { DASHBOARD_FOLDER } from './studentApp.ts';

/** Not the practice's own port, so that no address of the one is taken for the other. */
const PORT = 7711;

/** The second screen of this computer's networks; off. */
export const secondScreenHere = (host: PracticeHost, now: () => number): SecondScreen =>
  secondScreen({
    host,
    now,
    date: Date.now,
    addresses: () => privateAddresses(networkInterfaces()),
    listen: (app, address) => listenAt(app, address, PORT, true),
    folder: DASHBOARD_FOLDER,
  });

/** Switched on from the command line: at the first address there is. @returns what to tell, in lines */
export async function switchOnAtStart(screen: SecondScreen): Promise<string> {
  const first = screen.view().addresses[0];
  if (first === undefined)
    return 'No second screen: this computer is in no private network. Settings can switch it on later.';
  const problem = await screen.switchOn(first.address).catch((error: Error) => error.message);
  if (typeof problem === 'string') return problem;
  const { on } = screen.view();
  return `Second screen: open ${on?.url} on a phone or tablet in the same network, code ${on?.code.digits} (holds 5 minutes).`;
}
