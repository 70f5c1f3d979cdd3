import { afterEach, describe, expect, it, vi } from 'vitest';
import { hubClient } from '../../../src/dashboard/hub/client/client.ts';
import { placeOf, to } from '../../../src/dashboard/hub/shell/router.ts';

afterEach(() => vi.unstubAllGlobals());

/** A hub that answers everything with one answer. */
function answering(status: number, body: unknown) {
  const fetched = vi.fn(async (_url: string, _init: RequestInit) =>
    Response.json(body, { status }),
  );
  vi.stubGlobal('fetch', fetched);
  return fetched;
}

describe('asking the hub', () => {
  it('carries the token with each change', async () => {
    const fetched = answering(200, {});
    const client = hubClient(() => undefined);
    client.useToken('secret');
    await client.sessions.relabel('a/b', 4, 'ball');
    const [url, init] = fetched.mock.calls[0]!;
    expect(url).toBe('/api/sessions/a%2Fb/relabels/4');
    expect(init).toMatchObject({
      method: 'PUT',
      body: '{"kind":"ball"}',
      headers: { 'x-csrf-token': 'secret', 'content-type': 'application/json' },
    });
  });

  it('says when the hub no longer knows who asks', async () => {
    answering(401, { error: { code: 'sign-in', message: 'Sign in first.' } });
    const signedOut = vi.fn();
    await expect(hubClient(signedOut).students.students()).rejects.toThrow('Sign in first.');
    expect(signedOut).toHaveBeenCalledOnce();
  });

  it('keeps somebody signed in when something else is refused', async () => {
    answering(404, { error: { code: 'not-found', message: 'There is nothing.' } });
    const signedOut = vi.fn();
    await expect(hubClient(signedOut).sessions.session('x')).rejects.toThrow('nothing');
    expect(signedOut).not.toHaveBeenCalled();
  });
});

describe('addresses of the pages', () => {
  it('name page, thing and part, and leave the query to the page', () => {
    expect(placeOf('#/students/a%2Fb/plan?from=3')).toEqual({
      page: 'students',
      id: 'a/b',
      part: 'plan',
    });
    expect(placeOf(to('sessions', 'a/b'))).toMatchObject({ page: 'sessions', id: 'a/b' });
    expect(placeOf('')).toMatchObject({ page: 'home' });
    expect(placeOf('#/__proto__/x')).toMatchObject({ page: 'nowhere' });
  });
});
