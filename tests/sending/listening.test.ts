import { describe, expect, it, onTestFinished, vi } from 'vitest';
import { listening } from '../../src/sending/listening.ts';

const soon = { timeout: 240_000, interval: 5 };

function heard(wanted: () => boolean, ask: (signal: AbortSignal) => Promise<void>) {
  const end = listening({ wanted, ask, pausesMs: { look: 5, least: 20, most: 50, failed: 200 } });
  onTestFinished(end);
  return end;
}

describe('listening at the hub', () => {
  it('asks one question after the other, only while somebody is there', async () => {
    let there = false;
    let asked = 0;
    let open = 0;
    heard(
      () => there,
      async () => {
        asked++;
        expect(++open).toBe(1);
        await new Promise((done) => setTimeout(done, 5));
        open--;
      },
    );
    await new Promise((done) => setTimeout(done, 40));
    expect(asked).toBe(0);
    there = true;
    await vi.waitFor(() => expect(asked).toBeGreaterThan(2), soon);
  });

  it('leaves a hub that does not answer alone for a while', async () => {
    const times: number[] = [];
    const refuse = (): Promise<void> => {
      times.push(performance.now());
      return Promise.reject(new Error('no answer'));
    };
    heard(() => true, refuse);
    await vi.waitFor(() => expect(times.length).toBeGreaterThan(1), soon);
    expect(times[1]! - times[0]!).toBeGreaterThan(190);
  });

  it('gives up a question that is never answered, and all when it is ended', async () => {
    let ended = 0;
    let asked = 0;
    const never = (signal: AbortSignal): Promise<void> =>
      new Promise((_, reject) => {
        asked++;
        signal.addEventListener('abort', () => (ended++, reject(new Error('given up'))));
      });
    const end = heard(() => true, never);
    await vi.waitFor(() => expect([asked, ended]).toEqual([2, 1]), soon);
    end();
    expect(ended).toBe(2);
    await new Promise((done) => setTimeout(done, 60));
    expect(asked).toBe(2);
  });
});
