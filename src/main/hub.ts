#!/usr/bin/env node
import { type AddressInfo, createServer } from 'node:net';
import { fileURLToPath } from 'node:url';
import type { FastifyInstance } from 'fastify';
import { buildHub } from '../hub/app.ts';
import { backUp } from '../hub/backup.ts';
import { openHubData } from '../hub/db/open.ts';
import { fillDemoClub } from '../hub/demo/fill.ts';
import { servePages } from '../hub/pages.ts';
import { argon2 } from '../hub/people/passwords.ts';
import { tellDemo, tellProgress } from './hubDemo.ts';
import { HUB_HELP, type HubRunSettings, readHubSettings, warningOf } from './hubSettings.ts';
import { SettingsError } from './settings.ts';
import { listenWords } from './words.ts';

/** Where `npm run build` puts the page. */
const DASHBOARD_FOLDER = fileURLToPath(new URL('../../dist/dashboard/', import.meta.url));

/** One that nobody uses now: links carry it before it is listened on. */
const freePort = (host: string): Promise<number> =>
  new Promise((resolve, reject) => {
    const server = createServer().once('error', (error) =>
      reject(new Error(listenWords(error, host, 0), { cause: error })),
    );
    server.listen(0, host, () => {
      const { port } = server.address() as AddressInfo;
      server.close(() => resolve(port));
    });
  });

async function listen(app: FastifyInstance, port: number, host: string): Promise<void> {
  try {
    await app.listen({ port, host });
  } catch (error) {
    await app.close();
    throw new Error(listenWords(error, host, port), { cause: error });
  }
}

/** What is said before the hub can be reached is said once it can. */
function heldBack() {
  let early: string[] | null = [];
  return {
    say: (line: string): void => void (early === null ? console.log(line) : early.push(line)),
    release(): void {
      early?.forEach((line) => console.log(line));
      early = null;
    },
  };
}

async function backup(data: string, into: string): Promise<void> {
  const files = await backUp(data, into);
  console.log(`The hub in ${data} was copied to ${into}: its database and ${files} files.`);
}

async function run(settings: HubRunSettings): Promise<void> {
  await argon2();
  const { host, data, demo } = settings;
  const port = settings.port === 0 ? await freePort(host) : settings.port;
  const publicUrl = settings.url ?? `http://${host.includes(':') ? `[${host}]` : host}:${port}`;
  const warning = warningOf(settings);
  if (warning !== null) console.error(warning);
  const kept = await openHubData(data);
  const terminal = heldBack();
  const context = {
    db: kept.db,
    places: kept.places,
    settings: { publicUrl },
    now: Date.now,
    say: terminal.say,
  };
  const club = demo ? await fillDemoClub(context, tellProgress()) : null;
  const { app } = await buildHub(context);
  await servePages(app, DASHBOARD_FOLDER);
  try {
    await listen(app, port, host);
  } catch (error) {
    await kept.close();
    throw error;
  }
  console.log(`The hub is at ${publicUrl}/  (Ctrl+C ends it)`);
  terminal.release();
  if (club !== null) tellDemo(club);
  let ending = false;
  const end = (): void => {
    if (ending) process.exit(1);
    ending = true;
    void Promise.resolve(club?.stop())
      .then(() => app.close())
      .then(() => kept.close())
      .then(() => process.exit(0));
  };
  process.on('SIGINT', end);
  process.on('SIGTERM', end);
}

try {
  const settings = readHubSettings(process.argv.slice(2));
  if (settings === 'help') console.log(HUB_HELP);
  else if (settings.backup !== null) await backup(settings.data, settings.backup);
  else await run(settings);
} catch (error) {
  console.error(error instanceof Error ? error.message : String(error));
  process.exitCode = error instanceof SettingsError ? 2 : 1;
}
