import { homedir } from 'node:os';
import { join } from 'node:path';
import { parseArgs } from 'node:util';
import Type, { type Static } from 'typebox';
import Compile from 'typebox/compile';
import { SettingsError, refuseFile } from './settings.ts';
import { optionWords } from './words.ts';

const schema = Type.Object({
  port: Type.Integer({ minimum: 0, maximum: 65_535 }),
  host: Type.String({ minLength: 1 }),
  data: Type.String({ minLength: 1 }),
  /** `null`: the address that it listens on. */
  url: Type.Union([Type.String({ pattern: '^https?://[^/?#@]+/?$' }), Type.Null()]),
  /** A club of invented people with simulated sessions, in a folder of its own. */
  demo: Type.Boolean(),
  /** Folder to be filled with a copy of everything, instead of running. */
  backup: Type.Union([Type.String({ minLength: 1 }), Type.Null()]),
});

export type HubRunSettings = Static<typeof schema>;

const DEFAULT_PORT = 7411;
const DEFAULT_DATA = process.env['STILLCATCH_HUB'] ?? join(homedir(), '.stillcatch-hub');

export const HUB_HELP = `Usage: npm run hub -- [options]

Runs the coach's hub. The first start prints a code with which the first coach sets it up.

  --port N             port to listen on (default ${DEFAULT_PORT}; 0: any free one)
  --url <url>          address that people and computers reach it by: that of the reverse proxy with HTTPS in front
                       of it (default http://127.0.0.1:<port>)
  --host <address>     address to listen on (default 127.0.0.1: this computer only); others need --url
  --data <folder>      where everything is kept (default ${DEFAULT_DATA})
  --demo               fill and show a demo club: invented people, simulated sessions, in the folder demo of <data>
  --backup <folder>    copy everything that is kept into this new folder and end; the hub may run meanwhile
  --help               this text`;

const validator = Compile(schema);

const WANTED: Readonly<Record<string, string>> = {
  port: 'a whole number from 0 to 65535',
  host: 'an address of this computer',
  data: 'the path of a folder',
  url: 'like https://hub.example.org, without a path',
  backup: 'the path of a new folder',
};

const OPTIONS = {
  port: { type: 'string' },
  host: { type: 'string' },
  url: { type: 'string' },
  data: { type: 'string' },
  backup: { type: 'string' },
  demo: { type: 'boolean' },
  help: { type: 'boolean', short: 'h' },
} as const;

function parse(args: readonly string[]) {
  try {
    return parseArgs({ args: [...args], options: OPTIONS, strict: true, allowPositionals: false })
      .values;
  } catch (error) {
    throw new SettingsError(optionWords(error));
  }
}

const LOOPBACK = /^(localhost|127(\.\d{1,3}){3}|::1)$/;

function checkReach({ host, url }: HubRunSettings): void {
  if (url !== null && !URL.canParse(url))
    throw new SettingsError(`--url must be ${WANTED['url']}.`);
  if (!LOOPBACK.test(host) && url === null)
    throw new SettingsError(
      `--host ${host} lets others in: give the address that they use with --url, best one with https.`,
    );
}

/** What to say of a hub that others reach without encryption; `null` where there is nothing to say. */
export function warningOf({ host, url }: HubRunSettings): string | null {
  const plain = url?.startsWith('http:') === true && !LOOPBACK.test(new URL(url).hostname);
  return plain || (!LOOPBACK.test(host) && url?.startsWith('http:') === true)
    ? 'Caution: without HTTPS passwords and recordings cross the network readable. Put a reverse proxy with HTTPS in front (src/hub/README.md).'
    : null;
}

/** Reads the command line once. `'help'` where only the help was asked for. */
export function readHubSettings(args: readonly string[]): HubRunSettings | 'help' {
  const given = parse(args);
  if (given.help === true) return 'help';
  const demo = given.demo === true;
  const data = given.data ?? DEFAULT_DATA;
  const settings = {
    port: given.port === undefined ? DEFAULT_PORT : Number(given.port.trim() || 'none'),
    host: given.host ?? '127.0.0.1',
    data: demo && data !== '' ? join(data, 'demo') : data,
    demo,
    url: given.url ?? null,
    backup: given.backup ?? null,
  };
  if (!validator.Check(settings)) {
    const wrong = Object.keys(WANTED).find((key) =>
      validator.Errors(settings).some((error) => error.instancePath === `/${key}`),
    );
    const name = wrong ?? 'option';
    throw new SettingsError(`--${name} must be ${WANTED[name] ?? 'valid'}.`);
  }
  refuseFile(settings.data);
  checkReach(settings);
  return { ...settings, url: settings.url === null ? null : new URL(settings.url).origin };
}
