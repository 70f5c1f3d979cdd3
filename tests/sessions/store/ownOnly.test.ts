import { chmodSync, mkdirSync, statSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { openHubData } from '../../../src/hub/db/open.ts';
import { makePlaces } from '../../../src/sessions/store/places.ts';
import { scratch } from '../makeSession.ts';

const modeOf = (path: string): number => statSync(path).mode & 0o777;

/** A data folder that somebody made for all to read. */
function open(): string {
  const root = join(scratch(), 'data');
  mkdirSync(root);
  chmodSync(root, 0o755);
  return root;
}

describe.skipIf(process.platform === 'win32')('what lies in a data folder', () => {
  it('is for its own user alone on the hub, whoever made the folder', async () => {
    const before = process.umask(0o022);
    const root = open();
    const data = await openHubData(root);
    try {
      for (const name of ['', 'students', 'uploads', 'clips'])
        expect(modeOf(join(root, name))).toBe(0o700);
      writeFileSync(join(root, 'clips', 'film'), 'x');
      for (const name of ['hub.db', 'in-use', 'clips/film'])
        expect(modeOf(join(root, name))).toBe(0o600);
    } finally {
      await data.close();
      process.umask(before);
    }
  });

  it('is so for the student too', async () => {
    const before = process.umask(0o022);
    try {
      const root = open();
      writeFileSync(join(root, 'index.db'), '');
      const places = await makePlaces(root);
      for (const path of [root, places.sessions, places.deleted]) expect(modeOf(path)).toBe(0o700);
      expect(modeOf(places.index)).toBe(0o600);
    } finally {
      process.umask(before);
    }
  });
});
