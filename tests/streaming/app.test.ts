import { type AddressInfo, connect } from 'node:net';
import { describe, expect, it } from 'vitest';
import { DEFAULT_PLAN } from '../../src/coaching/plan.ts';
import { buildStudentApp } from '../../src/main/studentApp.ts';
import { practiceHost } from '../../src/practice/host.ts';
import { livePractice } from '../../src/practice/livePractice.ts';
import { HandSource, scriptedChain } from '../practice/scripted.ts';

const now = (): number => performance.now();
const practice = () =>
  livePractice({
    practiceId: 'p',
    source: new HandSource(),
    chain: scriptedChain([]),
    settings: { hand: 'right', plan: DEFAULT_PLAN },
    now,
  });

describe('the service of the page', () => {
  it('says how to build the page where it is missing', async () => {
    const app = await buildStudentApp({
      host: practiceHost({ first: practice() }),
      now,
      dashboardFolder: '/nowhere',
    });
    const reply = await app.inject({ url: '/', headers: { host: 'localhost:1' } });
    expect(reply.statusCode).toBe(503);
    expect(reply.body).toContain('npm run build');
    await app.close();
  });

  it('allows no inline script or style', async () => {
    const app = await buildStudentApp({ host: practiceHost({ first: practice() }), now });
    const reply = await app.inject({ url: '/', headers: { host: '127.0.0.1:1' } });
    const policy = String(reply.headers['content-security-policy']);
    expect(policy).toContain("script-src 'self'");
    expect(policy).not.toContain('unsafe');
    await app.close();
  });

  it('answers to no other name that points at this computer', async () => {
    const app = await buildStudentApp({ host: practiceHost({ first: practice() }), now });
    const reply = await app.inject({ url: '/', headers: { host: 'evil.example' } });
    expect(reply.statusCode).toBe(421);
    await app.close();
  });

  it('ends although an upload is under way', async () => {
    const app = await buildStudentApp({
      host: practiceHost({ first: practice() }),
      now,
      sessions: { store: null, problem: null, folder: '' },
    });
    const arrived = new Promise((resolve) => app.server.once('request', resolve));
    await app.listen({ host: '127.0.0.1', port: 0 });
    const { port } = app.server.address() as AddressInfo;
    const socket = connect(port, '127.0.0.1');
    socket.on('error', () => undefined);
    socket.write(
      `POST /api/import HTTP/1.1\r\nHost: localhost:${port}\r\nContent-Type: application/zip\r\nContent-Length: 99\r\n\r\nPK`,
    );
    await arrived;
    await expect(app.close()).resolves.toBeUndefined();
  });
});
