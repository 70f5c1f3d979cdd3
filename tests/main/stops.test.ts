import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { personFile } from '../../src/main/personFile.ts';
import { studentHost } from '../../src/main/studentHost.ts';
import { REFUSALS } from '../../src/practice/refusals.ts';
import { SyntheticSource } from '../../src/sensors/sources/synthetic/index.ts';
import { readCommand } from '../../src/streaming/command.ts';
import { scratch } from '../sessions/makeSession.ts';

const NOW = Date.UTC(2026, 4, 3, 9);
const BEGIN = { type: 'begin', kind: 'guided', hand: 'right', sensors: 'demo' } as const;
const ANSWERS = {
  clubConfirmed: false,
  historyConfirmed: false,
  warmedUp: false,
  redFlag: true,
  pain: null,
  signs: [],
} as const;

/** A service's practices; called again with the same folder, those after a restart. */
function service(root: string) {
  const source = () => new SyntheticSource({ seed: 1, prompted: true });
  const said: string[] = [];
  const host = studentHost({
    first: { source: source(), hand: 'right', kind: 'idle', close: async () => undefined },
    sourceFor: source,
    store: personFile(join(root, 'person.json'), (sentence) => said.push(sentence)),
    now: () => 0,
    date: () => NOW,
  });
  return { host, said, stop: () => host.current().view().person.stop };
}

describe('a red flag', () => {
  it('stops at once, asks for no number, and is known after a restart until it was read', async () => {
    const root = scratch();
    const first = service(root);
    expect(first.stop()).toBeUndefined();
    first.host.obey(BEGIN);
    const command = readCommand({ type: 'safety', answers: ANSWERS });
    if (typeof command === 'string') throw new Error(command);
    expect(first.host.obey(command)).toBeNull();
    const { stage, warnings } = first.host.current().view();
    expect([stage, warnings.map((w) => w.id)]).toEqual(['stopped', ['red-flag']]);
    const stopped = { id: 'red-flag', atMs: NOW, read: false };
    expect(first.stop()).toEqual(stopped);
    await first.host.stop();

    const again = service(root);
    expect(again.stop()).toEqual(stopped);
    expect(again.host.obey({ type: 'stop-read' })).toBeNull();
    expect(again.stop()).toEqual({ ...stopped, read: true });
    again.host.obey(BEGIN);
    expect(again.stop()).toEqual({ ...stopped, read: true });
    expect(service(root).stop()).toEqual({ ...stopped, read: true });
    expect([...first.said, ...again.said]).toEqual([]);
    await again.host.stop();
  });

  it('asked for and denied, the rating is asked for', () => {
    const { host, stop } = service(scratch());
    host.obey(BEGIN);
    const denied = { ...ANSWERS, clubConfirmed: true, historyConfirmed: true, redFlag: false };
    expect(host.obey({ type: 'safety', answers: denied })).toBe(REFUSALS['pain-first']);
    expect(host.obey({ type: 'safety', answers: { ...denied, pain: 4 } })).toBeNull();
    expect(stop()).toEqual({ id: 'pain-now', atMs: NOW, read: false });
    expect(host.current().view().stage).toBe('strap');
  });

  it('of which there is none cannot be read', () => {
    expect(service(scratch()).host.obey({ type: 'stop-read' })).toBe(REFUSALS['no-stop']);
  });
});
