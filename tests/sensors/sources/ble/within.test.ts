import { expect, it, onTestFinished } from 'vitest';
import { LinkError } from '../../../../src/sensors/sources/ble/linkError.ts';
import { within } from '../../../../src/sensors/sources/ble/within.ts';

const soon = (): Promise<void> => new Promise((resolve) => setTimeout(resolve, 5));

it('a wait that is over before it begins still swallows what comes late', async () => {
  const loose: unknown[] = [];
  const listen = (reason: unknown): void => void loose.push(reason);
  process.on('unhandledRejection', listen);
  onTestFinished(() => void process.off('unhandledRejection', listen));
  let fail: (error: Error) => void = () => undefined;
  const promise = new Promise<void>((_, reject) => (fail = reject));
  const over = AbortSignal.abort(new LinkError('cancelled'));
  await expect(within(promise, 1000, 'connect-timeout', over)).rejects.toMatchObject({
    code: 'cancelled',
  });
  fail(new Error('late'));
  await soon();
  expect(loose).toEqual([]);
});
