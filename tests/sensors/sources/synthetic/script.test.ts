import { describe, expect, it } from 'vitest';
import { ScriptError, parseScript } from '../../../../src/sensors/sources/synthetic/index.ts';

const errorOf = (script: string): ScriptError => {
  try {
    parseScript(script);
  } catch (error) {
    if (error instanceof ScriptError) return error;
  }
  throw new Error(`"${script}" was accepted`);
};

describe('the session script', () => {
  it('reads words, arguments and repeats in order', () => {
    expect(parseScript(' r, r:short-hold*2  b:0.6 b p idle:12 walk takeoff ')).toEqual([
      { kind: 'rehearsal', fault: null },
      { kind: 'rehearsal', fault: 'short-hold' },
      { kind: 'rehearsal', fault: 'short-hold' },
      { kind: 'ball', carryOver: 0.6 },
      { kind: 'ball', carryOver: 0.7 },
      { kind: 'practiceSwing' },
      { kind: 'idle', seconds: 12 },
      { kind: 'walk', seconds: null },
      { kind: 'takeoff', seconds: null },
    ]);
  });

  it('is empty where there is no word', () => {
    expect(parseScript(' , ')).toEqual([]);
  });

  it.each([
    ['r r x b', 5, 3, 'unknown word "x"'],
    ['r r:late', 3, 2, 'unknown fault "late"'],
    ['b:2', 1, 1, 'from 0 to 1.5'],
    ['b:', 1, 1, 'from 0 to 1.5'],
    ['b:1e1', 1, 1, 'from 0 to 1.5'],
    ['idle:0', 1, 1, 'from 1 to 600'],
    ['walk:3', 1, 1, '"walk" takes nothing'],
    ['p:1', 1, 1, '"p" takes nothing'],
    ['takeoff r', 1, 1, 'nothing may follow'],
    ['takeoff*2', 1, 1, 'nothing may follow'],
    ['r*0', 1, 1, 'repeat count'],
    ['r*1.5', 1, 1, 'whole'],
    ['r*2*3', 1, 1, 'repeat count'],
    ['*3', 1, 1, 'unknown word ""'],
  ])('refuses "%s" at character %i, word %i', (script, position, token, message) => {
    const error = errorOf(script);
    expect(error.position).toBe(position);
    expect(error.token).toBe(token);
    expect(error.message).toContain(message);
    expect(error.message).toContain(`character ${position}`);
  });
});
