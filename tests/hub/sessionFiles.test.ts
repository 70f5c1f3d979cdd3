import type { LogEntry } from '../../src/streaming/hubContract/log.ts';
import { copyFile, readdir, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { gunzipSync } from 'node:zlib';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { analysisQueue } from '../../src/hub/analysis/queue.ts';
import { takeIn } from '../../src/hub/uploads/takeIn.ts';
import type {
  Imported,
  RepetitionCurves,
  SessionOverview,
} from '../../src/streaming/sessionsContract.ts';
import { type TestHub, testHub } from './testHub.ts';
import { OTHER, SESSION } from './uploads/sending.ts';

const RECORDING = fileURLToPath(new URL('../../recordings/right-mixed.zip', import.meta.url));

describe('a session’s files on the hub', () => {
  let hub: TestHub;
  let id: string;
  beforeAll(async () => {
    hub = await testHub();
    const path = join(hub.context.places.uploads, 'x.part');
    await copyFile(RECORDING, path);
    const about = { studentId: 'sam', clientId: 'a1', sha256: 'x', bytes: 1, path };
    ({ sessionId: id } = await takeIn(hub.context, about));
    const queue = analysisQueue(hub.context);
    await queue.idle();
    await queue.close();
  });
  afterAll(() => hub.close());

  const audited = async (act: string): Promise<readonly string[]> => {
    const entries = (await hub.ask('olga', { url: '/api/log' })).json<LogEntry[]>();
    return entries
      .filter((entry) => entry.act === act)
      .map(({ by, about: { session, format } }) =>
        [by?.name, session?.student ?? 'deleted', format].join(', '),
      );
  };

  it('has small multiples and curves of each repetition', async () => {
    const answer = await hub.ask('carl', { url: `/api/sessions/${id}/overview` });
    const overview = JSON.parse(gunzipSync(answer.rawPayload).toString()) as SessionOverview;
    expect(overview.repetitions).toHaveLength(15);
    for (const { index, kind } of overview.repetitions) {
      const curves = await hub.ask('sam', { url: `/api/sessions/${id}/curves/${index}` });
      expect(curves.json<RepetitionCurves>()).toMatchObject({ index, kind });
    }
    expect((await hub.ask('carl', { url: `/api/sessions/${id}/curves/99` })).statusCode).toBe(404);
  });

  it('is handed out in every format, and that is written down', async () => {
    const zip = await hub.ask('carl', { url: `/api/sessions/${id}/export/zip` });
    expect(zip.rawPayload.equals(SESSION)).toBe(true);
    const csv = await hub.ask('sam', { url: `/api/sessions/${id}/export/csv` });
    expect(csv.body.trim().split('\n').length).toBeGreaterThan(15);
    for (const format of ['angles', 'sto'])
      expect(
        (await hub.ask('sam', { url: `/api/sessions/${id}/export/${format}` })).statusCode,
      ).toBe(200);
    expect(await audited('export')).toContain('Carl, Sam, zip');
  });

  it.each(['tom', 'olga', 'sue'])('is not there for %s', async (who) => {
    for (const path of ['overview', 'curves/1', 'export/zip'])
      expect((await hub.ask(who, { url: `/api/sessions/${id}/${path}` })).statusCode).toBe(404);
    const gone = await hub.ask(who, { url: `/api/sessions/${id}`, method: 'DELETE' });
    expect(gone.statusCode).toBe(404);
  });

  const bring = (who: string, student: string, payload: Buffer) =>
    hub.ask(who, {
      url: `/api/students/${student}/import`,
      method: 'POST',
      headers: { 'content-type': 'application/zip' },
      payload,
    });

  it('comes by mail through the student’s own coach, once', async () => {
    const first = await bring('carl', 'sue', OTHER);
    expect(first.statusCode).toBe(201);
    const row = await hub.context.db
      .selectFrom('session')
      .select(['studentId', 'hand', 'clientId'])
      .where('id', '=', first.json<Imported>().id)
      .executeTakeFirstOrThrow();
    expect(row).toMatchObject({ studentId: 'sue', hand: 'left' });
    expect((await bring('carl', 'sue', OTHER)).statusCode).toBe(409);
    expect((await bring('carl', 'tom', OTHER)).statusCode).toBe(404);
    expect((await bring('carl', 'sue', Buffer.from('no zip'))).statusCode).toBe(400);
    expect(await readdir(hub.context.places.uploads)).toEqual([]);
  });

  it('is really gone once it was deleted', async () => {
    await hub.context.db
      .insertInto('clip')
      .values({
        id: 'c1',
        sessionId: id,
        byId: 'carl',
        name: 'a.mp4',
        type: 'video/mp4',
        bytes: 1,
        createdMs: 1,
        startS: null,
        view: null,
      })
      .execute();
    await writeFile(join(hub.context.places.clips, 'c1'), 'x');
    const gone = await hub.ask('sam', { url: `/api/sessions/${id}`, method: 'DELETE' });
    expect(gone.statusCode).toBe(204);
    expect(await readdir(hub.context.places.students)).not.toContain('sam');
    expect(await readdir(hub.context.places.clips)).toEqual([]);
    expect((await hub.ask('carl', { url: `/api/sessions/${id}/overview` })).statusCode).toBe(404);
    expect(await audited('delete')).toEqual(['Sam, deleted, ']);
  });
});
