import { homedir } from 'node:os';
import { join } from 'node:path';
import { parseArgs } from 'node:util';
import { SettingsError } from './settings.ts';

export interface HubRunSettings {
  readonly port: number;
  readonly host: string;
  readonly data: string;
  readonly publicUrl: string;
  /** A club of invented people with simulated sessions, in a folder of its own. */
  readonly demo: boolean;
}

const DEFAULT_PORT = 7411;
const DEFAULT_DATA = process.env['STILLCATCH_HUB'] ?? join(homedir(), '.stillcatch-hub');

export const HUB_HELP = `Usage: npm run hub -- [options]

Runs the coach's hub. The first start prints a code with which the first coach sets it up.

  --port N             port to listen on (default ${DEFAULT_PORT})
  --host <address>     address to listen on (default 127.0.0.1: this computer only)
  --public-url <url>   address that people and computers reach it by, of the reverse proxy with HTTPS in front of it
                       (default http://localhost:<port>)
  --data <folder>      where everything is kept (default ${DEFAULT_DATA})
  --demo               fill and show a demo club: invented people, simulated sessions, in the folder demo of <data>
  --help               this text`;

const OPTIONS = {
  port: { type: 'string' },
  host: { type: 'string' },
  'public-url': { type: 'string' },
  data: { type: 'string' },
  demo: { type: 'boolean' },
  help: { type: 'boolean', short: 'h' },
} as const;

function parse(args: readonly string[]) {
  try {
    return parseArgs({ args: [...args], options: OPTIONS, strict: true, allowPositionals: false })
      .values;
  } catch (error) {
    throw new SettingsError(error instanceof Error ? error.message : String(error));
  }
}

function checkedUrl(text: string): string {
  const url = URL.canParse(text) ? new URL(text) : null;
  if (url === null || !/^https?:$/.test(url.protocol) || url.pathname !== '/')
    throw new SettingsError(
      `--public-url must be like https://hub.example.org, without a path; it is ${text}.`,
    );
  return url.origin;
}

/** Reads the command line once. `'help'` where only the help was asked for. */
export function readHubSettings(args: readonly string[]): HubRunSettings | 'help' {
  const given = parse(args);
  if (given.help === true) return 'help';
  const port = given.port === undefined ? DEFAULT_PORT : Number(given.port);
  if (!Number.isInteger(port) || port < 0 || port > 65_535)
    throw new SettingsError('--port must be a whole number from 0 to 65535.');
  const data = given.data ?? DEFAULT_DATA;
  const demo = given.demo === true;
  return {
    port,
    host: given.host ?? '127.0.0.1',
    demo,
    data: demo ? join(data, 'demo') : data,
    publicUrl: checkedUrl(given['public-url'] ?? `http://localhost:${port}`),
  };
}
