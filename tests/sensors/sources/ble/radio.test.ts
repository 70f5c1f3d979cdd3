import { afterEach, beforeEach, expect, it, vi } from 'vitest';
import type { FromRadio, ToRadio } from '../../../../src/sensors/sources/ble/messages.ts';
import { Radio } from '../../../../src/sensors/sources/ble/radio.ts';
import type { RadioProcessListener } from '../../../../src/sensors/sources/ble/radioProcess.ts';

const child = vi.hoisted(() => ({
  listener: null as RadioProcessListener | null,
  sent: [] as ToRadio[],
  restarts: 0,
}));
vi.mock(import('../../../../src/sensors/sources/ble/radioProcess.ts'), () => ({
  RadioProcess: class {
    readonly pid = null;
    constructor(listener: RadioProcessListener) {
      child.listener = listener;
    }
    start(): void {
      child.listener?.started();
    }
    send(message: ToRadio): void {
      child.sent.push(message);
    }
    restart(): void {
      child.restarts += 1;
      child.listener?.started();
    }
    async stop(): Promise<void> {
      // There is no process.
    }
  } as never,
}));

beforeEach(() => {
  vi.useFakeTimers({ toFake: ['setTimeout', 'clearTimeout'] });
  Object.assign(child, { sent: [], restarts: 0 });
});
afterEach(() => void vi.useRealTimers());

const says = (message: FromRadio): void => child.listener?.message(message);
const adapter = (problem: 'no-answer' | 'in-use' | null): void =>
  says({ type: 'adapter', problem, detail: '' });
const browsing = (): Radio => {
  const radio = new Radio(() => 0);
  radio.browse(true);
  return radio;
};

it('looks again after a while where the adapter does not answer', async () => {
  browsing();
  adapter('no-answer');
  await vi.advanceTimersByTimeAsync(11_000);
  expect(child.restarts).toBe(1);
});

it('leaves an adapter alone that answered late after all', async () => {
  const radio = browsing();
  adapter('no-answer');
  adapter('no-answer');
  await vi.advanceTimersByTimeAsync(3000);
  adapter(null);
  await vi.advanceTimersByTimeAsync(30_000);
  expect(child.restarts).toBe(0);
  expect(radio.status).toMatchObject({ ready: true, problem: null });
});

it('has the links that a dead process left closed by the first one that reaches the adapter', () => {
  browsing();
  adapter(null);
  says({ type: 'handle', id: 'a', handle: 64 });
  const told = (): unknown => child.sent.findLast((m) => m.type === 'hangUp');
  child.listener?.started();
  expect(told()).toMatchObject({ handles: [64] });
  // that one died before it came so far
  child.listener?.started();
  expect(told()).toMatchObject({ handles: [64] });
  adapter(null);
  child.listener?.started();
  expect(told()).toMatchObject({ handles: [] });
});
