import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { expect, it, onTestFinished, vi } from 'vitest';
import { NOBODY, type Person } from '../../src/practice/person.ts';
import { openStore } from '../../src/sessions/store/store.ts';
import { scratch } from '../sessions/makeSession.ts';
import { realService } from './realService.ts';

const RECORDING = fileURLToPath(new URL('../../recordings/right-mixed.zip', import.meta.url));

it('a note that is edited on its session’s page is the one that Today shows', async () => {
  const root = scratch();
  const store = await openStore(root);
  const id = await store.importSession(RECORDING);
  const { startedMs } = (await store.get(id))!;
  await store.close();
  const session = { startedMs, repetitions: 9, painBefore: 1, painAfter: 2, note: 'before' };
  const path = join(root, 'person.json');
  const person: Person = {
    ...NOBODY,
    historyConfirmed: true,
    sessions: [{ ...session, sessionId: id }],
  };
  writeFileSync(path, JSON.stringify(person));
  const service = await realService(root, 1, {}, false);
  onTestFinished(() => service.end('SIGTERM'));
  expect(service.view().person.lastSession?.note).toBe('before');
  const answer = await fetch(new URL(`/api/sessions/${id}/notes`, service.url), {
    method: 'PATCH',
    body: JSON.stringify({ note: 'after' }),
    headers: { 'content-type': 'application/json' },
  });
  expect(answer.status).toBe(204);
  await vi.waitFor(() => expect(service.view().person.lastSession?.note).toBe('after'), 60_000);
  const written = JSON.parse(readFileSync(path, 'utf8')) as Person;
  expect(written.sessions).toEqual([{ ...session, sessionId: id, note: 'after' }]);
});
