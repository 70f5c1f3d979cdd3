import type { FastifyInstance } from 'fastify';
import type { PracticeHost } from '../../practice/host.ts';
import { Refused } from '../apiErrors.ts';
import { qrRows } from '../qrRows.ts';
import type { NetworkAddress, PairRefusal, SecondScreenView } from '../secondScreenContract.ts';
import { type PairingCode, codeView, newPairingCode, tryCode } from './code.ts';
import { type ScreenApp, buildScreenApp } from './screenApp.ts';
import { type Screens, newScreens } from './screens.ts';

export interface SecondScreenOptions {
  readonly host: PracticeHost;
  /** Monotonic, ms. */
  readonly now: () => number;
  /** ms since 1970, UTC. */
  readonly date: () => number;
  /** This computer's addresses in private networks, looked up anew each time. */
  readonly addresses: () => readonly NetworkAddress[];
  /** Binds to that address alone. */
  readonly listen: (app: FastifyInstance, address: string) => Promise<{ readonly url: string }>;
  /** Where the built pages are. */
  readonly folder: string;
}

/** The second screen: off until somebody switches it on, for as long as the service runs. */
export interface SecondScreen {
  view(): SecondScreenView;
  /** @throws Refused where it is on already, or this computer does not have that address */
  switchOn(address: string): Promise<void>;
  switchOff(): Promise<void>;
  /** @throws Refused where it is off */
  newCode(): void;
  /** Ends one screen, or all of them. */
  end(id: string | null): void;
}

interface Running extends ScreenApp {
  readonly address: string;
  readonly url: string;
  readonly screens: Screens;
  code: PairingCode;
}

const refused = (code: string, message: string): Refused => new Refused(409, code, message);

async function start(options: SecondScreenOptions, address: string): Promise<Running> {
  const { now, date, listen } = options;
  const screens = newScreens();
  const pair = (digits: string, from: string): { token: string } | PairRefusal => {
    const outcome = tryCode(running.code, digits, now());
    if (outcome === 'right') return { token: screens.add(from, date()) };
    return outcome === 'wrong' ? 'wrong-code' : 'no-code';
  };
  const built = await buildScreenApp({ ...options, screens, pair });
  const { url } = await listen(built.app, address).catch(async (error: unknown) => {
    await built.app.close();
    const why = error instanceof Error ? error.message : String(error);
    throw new Refused(503, 'not-listening', `The second screen could not be turned on: ${why}`);
  });
  const running: Running = { ...built, address, url, screens, code: newPairingCode(now()) };
  return running;
}

function onView(
  { address, url, code, screens, isWatching }: Running,
  nowMs: number,
  addresses: readonly NetworkAddress[],
): SecondScreenView['on'] {
  return {
    url,
    qr: qrRows(url),
    address,
    reachable: addresses.some((a) => a.address === address),
    code: codeView(code, nowMs),
    screens: screens.all().map((screen) => ({ ...screen, watching: isWatching(screen.id) })),
  };
}

function endScreens({ screens, hangUp }: Running, id: string | null): void {
  const ids = id === null ? screens.all().map((screen) => screen.id) : [id];
  for (const one of ids) if (screens.remove(one)) hangUp(one);
}

export function secondScreen(options: SecondScreenOptions): SecondScreen {
  const { addresses, now } = options;
  let running: Running | null = null;
  let starting: Promise<void> | null = null;
  const must = (): Running => {
    if (running === null) throw refused('off', 'The second screen is switched off.');
    return running;
  };
  return {
    view: () => {
      const here = addresses();
      return { addresses: here, on: running && onView(running, now(), here) };
    },
    switchOn: async (address) => {
      if (running ?? starting) throw refused('on', 'The second screen is on already.');
      if (!addresses().some((a) => a.address === address))
        throw refused('no-address', 'This computer does not have that address. Choose one shown.');
      starting = start(options, address).then((started) => void (running = started));
      await starting.finally(() => (starting = null));
    },
    switchOff: async () => {
      await starting?.catch(() => undefined);
      const before = running;
      running = null;
      await before?.app.close();
    },
    newCode: () => {
      must().code = newPairingCode(now());
    },
    end: (id) => endScreens(must(), id),
  };
}
