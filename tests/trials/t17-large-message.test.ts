// socketio/socket.io#3946: a message over 1 MB drops the connection silently.
import { expect, it } from 'vitest';
import type { Plan } from '../../src/coaching/plan.ts';
import { DEFAULT_PLAN } from '../../src/coaching/plan.ts';
import { warningOf } from '../../src/coaching/warnings.ts';
import type { PracticeView } from '../../src/practice/view.ts';
import { bound } from '../../src/streaming/bound.ts';
import { MAX_COMMAND_BYTES, MAX_MESSAGE_BYTES } from '../../src/streaming/contract.ts';
import { frame, phase, rehearsal } from '../practice/scripted.ts';
import { next, openPage, service, wait } from '../streaming/pages.ts';

const bytes = (value: unknown): number => Buffer.byteLength(JSON.stringify(value));
const long = 'ä'.repeat(50_000);

/** A view in which everything is as large as it can get, and the free texts far larger than they may be. */
function largest(view: PracticeView): PracticeView {
  const plan: Plan = { ...DEFAULT_PLAN, note: long, name: long, checklist: Array(20).fill(long) };
  return {
    ...view,
    plan,
    sensors: view.sensors.map((sensor) => ({ ...sensor, name: long, reason: long })),
    warnings: Array.from({ length: 20 }, (_, i) => ({
      ...warningOf('club', i),
      acknowledgedAtS: null,
    })),
    calibration: {
      ...view.calibration,
      quality: {
        accepted: false,
        chest: { explained: 0.5, spreadDeg: 1, squarenessDeg: 2 },
        trailArm: { explained: 0.5, spreadDeg: 1, squarenessDeg: 2 },
        problems: Array.from({ length: 12 }, () => ({
          code: 'gap' as const,
          message: long,
          refuses: true,
        })),
      },
    },
  };
}

it('the largest view stays under the bound', async () => {
  const frames = Array.from(
    { length: 1200 },
    (_, i) => [i / 100, frame(i / 100, -89.123456, -33.123456, -12.123456)] as const,
  );
  const many = Array.from(
    { length: 300 },
    (_, i) => [12, { kind: 'repetition', others: [], repetition: rehearsal(i + 1) }] as const,
  );
  const running = await service([...frames, ...many, [12, phase('caught', 12)]]);
  running.source.packets(12);
  const view = largest(running.practice.view());
  expect(view.strip.length).toBe(60);
  expect(bytes(view)).toBeGreaterThan(MAX_MESSAGE_BYTES);
  expect(bytes(bound({ sequence: 1, view }))).toBeLessThan(MAX_MESSAGE_BYTES);
  await running.end();
});

it('a command at the bound is answered; over it the page is hung up on, comes back and loses nothing', async () => {
  const running = await service([]);
  const page = openPage(running.url);
  await next(page, 'snapshot');
  const atBound = { type: 'pause', filler: 'x'.repeat(MAX_COMMAND_BYTES - 200) };
  expect(await page.emitWithAck('command', atBound as never)).toMatchObject({ ok: false });
  const why = new Promise((resolve) => page.once('disconnect', resolve));
  const back = next(page, 'snapshot');
  page.emit('command', { type: 'pause', filler: 'x'.repeat(2_000_000) } as never, () => undefined);
  expect(await why).toMatch(/transport|close/);
  await back;
  expect(await page.emitWithAck('command', { type: 'pause' })).toEqual({ ok: true });
  await wait(20);
  page.disconnect();
  await running.end();
});
