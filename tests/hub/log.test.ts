import { sql } from 'kysely';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { note } from '../../src/hub/log/log.ts';
import type { LogCheck, LogEntry } from '../../src/streaming/hubContract/log.ts';
import { type TestHub, testHub } from './testHub.ts';

let hub: TestHub;
beforeEach(async () => {
  hub = await testHub();
});
afterEach(() => hub.close());

const BY_CARL = { actor: { kind: 'person', id: 'carl' }, ip: '::1' } as unknown as Parameters<
  typeof note
>[1];

const logOf = async (before?: number): Promise<LogEntry[]> =>
  (
    await hub.ask('olga', { url: `/api/log${before === undefined ? '' : `?before=${before}`}` })
  ).json();
const checked = async (): Promise<LogCheck> =>
  (await hub.ask('olga', { url: '/api/log/check' })).json();
const rename = (id: string, name: string): Promise<unknown> =>
  hub.ask('carl', { method: 'PATCH', url: `/api/students/${id}`, payload: { name } });

describe('the log', () => {
  it('comes in pages of a hundred, newest first, each entry once', async () => {
    for (let i = 0; i < 250; i++) await note(hub.context, BY_CARL, 'relabel', { repetition: i });
    const seen: LogEntry[] = [];
    for (let before: number | undefined; ;) {
      const page = await logOf(before);
      expect(page.length).toBeLessThanOrEqual(100);
      if (page.length === 0) break;
      seen.push(...page);
      before = page.at(-1)?.id;
    }
    expect(seen.map(({ about }) => about.repetition)).toEqual(
      Array.from({ length: 250 }, (_, i) => 249 - i),
    );
    expect((await hub.ask('olga', { url: '/api/log?before=x' })).statusCode).toBe(400);
  });

  it('says who did what by the names of today, whatever names come and go', async () => {
    await note(hub.context, BY_CARL, 'plan', { person: 'sam' });
    await note(hub.context, BY_CARL, 'plan', { person: 'sue' });
    // a name that stands within other names and words, and that somebody else has
    await rename('sam', 'a');
    await rename('sam', 'Carl');
    await rename('sam', 'deleted');
    await hub.ask('carl', {
      method: 'DELETE',
      url: '/api/students/sam',
      payload: { name: 'deleted' },
    });
    const plans = (await logOf()).filter(({ act }) => act === 'plan');
    expect(plans).toMatchObject([
      { by: { name: 'Carl' }, about: { person: { name: 'Sue', role: 'student' } } },
      { by: { name: 'Carl' }, about: { person: { name: null, role: 'student' } } },
    ]);
    expect(await checked()).toMatchObject({ brokenAt: null });
  });

  it('holds no name and nothing that was typed at a failed sign-in', async () => {
    for (const login of ['sam', 'a secret typed here by mistake'])
      await hub.ask(null, { method: 'POST', url: '/api/login', payload: { login, password: 'x' } });
    const { rows } = await sql<{ all: string }>`
      select group_concat(act || about, ';') as "all" from log`.execute(hub.context.db);
    expect(rows[0]?.all).not.toMatch(/secret|Sam|sam/);
    expect((await logOf()).map(({ act, about }) => [act, about.person?.name])).toEqual([
      ['login-failed', undefined],
      ['login-failed', 'Sam'],
    ]);
  });

  it('is only added to, and what was changed behind its back is found', async () => {
    const { db } = hub.context;
    for (const person of ['sam', 'sue', 'sam'])
      await note(hub.context, BY_CARL, 'plan', { person });
    await expect(db.updateTable('log').set({ act: 'export' }).execute()).rejects.toThrow(
      /only added/,
    );
    await expect(db.deleteFrom('log').execute()).rejects.toThrow(/only added/);
    expect(await checked()).toEqual({ entries: 3, brokenAt: null });
    await sql`drop trigger logNoupdate`.execute(db);
    await db.updateTable('log').set({ byNumber: 2 }).where('id', '=', 2).execute();
    expect(await checked()).toEqual({ entries: 3, brokenAt: 2 });
  });

  it('misses an entry that was taken out', async () => {
    const { db } = hub.context;
    for (const person of ['sam', 'sue', 'sam'])
      await note(hub.context, BY_CARL, 'plan', { person });
    await sql`drop trigger logNodelete`.execute(db);
    await db.deleteFrom('log').where('id', '=', 2).execute();
    expect(await checked()).toEqual({ entries: 2, brokenAt: 3 });
  });
});
