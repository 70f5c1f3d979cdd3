#!/usr/bin/env node
import { fileURLToPath } from 'node:url';
import { buildHub } from '../hub/app.ts';
import { openHubData } from '../hub/db/open.ts';
import { fillDemoClub } from '../hub/demo/fill.ts';
import { servePages } from '../hub/pages.ts';
import { HUB_HELP, type HubRunSettings, readHubSettings } from './hubSettings.ts';
import { tellDemo, tellProgress } from './hubDemo.ts';
import { SettingsError } from './settings.ts';

/** Where `npm run build` puts the page. */
const DASHBOARD_FOLDER = fileURLToPath(new URL('../../dist/dashboard/', import.meta.url));

async function run({ port, host, data, publicUrl, demo }: HubRunSettings): Promise<void> {
  const kept = await openHubData(data);
  const context = {
    db: kept.db,
    places: kept.places,
    settings: { publicUrl },
    now: Date.now,
    say: console.log,
  };
  const club = demo ? await fillDemoClub(context, tellProgress()) : null;
  const { app } = await buildHub(context);
  await servePages(app, DASHBOARD_FOLDER);
  await app.listen({ port, host });
  console.log(`The hub is at ${publicUrl}/  (Ctrl+C ends it)`);
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
  else await run(settings);
} catch (error) {
  console.error(error instanceof Error ? error.message : String(error));
  process.exitCode = error instanceof SettingsError ? 2 : 1;
}
