import { readFileSync } from 'node:fs';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { seededRandom } from '../../src/math/random.ts';
import { sessionPaths } from '../../src/hub/sessionPaths.ts';
import { type TestHub, testHub } from '../hub/testHub.ts';
import {
  type Connection,
  SESSION,
  announce,
  listen,
  sendCut,
  sessionsOf,
  sha256,
  uploadUrl,
} from '../hub/uploads/sending.ts';

// Public fault: enviroCar/enviroCar-app#258, a broken upload leaves duplicates.
describe('an upload that breaks off again and again', () => {
  let hub: TestHub;
  let line: Connection;
  beforeAll(async () => {
    hub = await testHub();
    line = { port: await listen(hub), headers: await hub.headersOf('sam:machine') };
  });
  afterAll(() => hub.close());

  const received = async (): Promise<number> => {
    const answer = await hub.ask('sam:machine', { url: uploadUrl('s1') });
    return answer.json<{ received: number }>().received;
  };

  it('cut at fifty random bytes is one session, byte for byte', async () => {
    const random = seededRandom(20);
    expect((await announce(hub, 'sam:machine', 's1', SESSION)).json()).toEqual({
      received: 0,
      bytes: SESSION.length,
      complete: false,
    });
    for (let cut = 1; cut <= 50; cut++) {
      const from = await received();
      const left = SESSION.length - from;
      // the whole is never handed over before the last cut
      await sendCut(
        line,
        's1',
        SESSION,
        from,
        from + Math.floor((random() * left * 2) / (52 - cut)),
      );
      expect(await received()).toBeGreaterThanOrEqual(from);
    }
    // a broken connection's last bytes may still be on their way: a sender goes on from where it stands, until it is whole
    for (let tries = 0; tries < 10 && (await received()) < SESSION.length; tries++)
      await sendCut(line, 's1', SESSION, await received(), SESSION.length);
    const sessions = await sessionsOf(hub, 'sam');
    expect(sessions).toHaveLength(1);
    const { zip } = sessionPaths(hub.context.places, 'sam', sessions[0]!.id);
    expect(sha256(readFileSync(zip))).toBe(sha256(SESSION));
  });

  it('sent once more is complete already, and one session', async () => {
    const answer = await announce(hub, 'sam:machine', 's1', SESSION);
    expect(answer.json()).toMatchObject({ complete: true, received: SESSION.length });
    await sendCut(line, 's1', SESSION, 0, SESSION.length);
    expect(await sessionsOf(hub, 'sam')).toHaveLength(1);
  });
});
