import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { isolated, isolatedWithin, isolating } from '../../../src/dashboard/strings/isolated.ts';

const HEBREW = 'שלום';
const ARABIC = 'محمد';

describe('people’s text in a sentence', () => {
  it('is isolated where it is written right to left, and left alone where it is not', () => {
    expect(isolated(HEBREW)).toBe(`\u2068${HEBREW}\u2069`);
    expect(isolated(`Ann ${ARABIC}`)).toBe(`\u2068Ann ${ARABIC}\u2069`);
    for (const plain of ['Ann', 'Jörg Müller-Lüdenscheid', '', '12,5 %', '日本'])
      expect(isolated(plain)).toBe(plain);
  });

  it('is isolated in a sentence that came with it', () => {
    const within = isolatedWithin(`Name: ${HEBREW} ${ARABIC}, before: ${ARABIC}.`);
    expect(within).toBe(`Name: \u2068${HEBREW} ${ARABIC}\u2069, before: \u2068${ARABIC}\u2069.`);
    expect(isolatedWithin('Name: Ann')).toBe('Name: Ann');
  });

  it('never ends its isolation itself, nor turns what comes after it', () => {
    const part = fc.constantFrom(
      HEBREW,
      'a',
      ' ',
      '\u202e',
      '\u202b',
      '\u2067',
      '\u2069',
      '\u202c',
    );
    fc.assert(
      fc.property(fc.array(part), (parts) => {
        const text = isolated(parts.join(''));
        const inside = /^\u2068(.*)\u2069$/.exec(text)?.[1] ?? text;
        expect(inside).not.toMatch(/[\u202a-\u202e\u2066-\u2069]/);
      }),
    );
  });

  it('is isolated in every sentence of a dictionary, however deep, and in nothing else', () => {
    const words = isolating({
      plain: 'Hello',
      of: (name: string, n: number) => `${name} has ${n}`,
      deep: { list: ['a'], to: (name: string | null) => `to ${name ?? 'nobody'}` },
      date: new Date(0),
    });
    expect(words.plain).toBe('Hello');
    expect(words.of(HEBREW, 3)).toBe(`\u2068${HEBREW}\u2069 has 3`);
    expect(words.of('Ann', 3)).toBe('Ann has 3');
    expect(words.deep.to(null)).toBe('to nobody');
    expect(words.deep.to(ARABIC)).toBe(`to \u2068${ARABIC}\u2069`);
    expect(words.deep.to).toBe(words.deep.to);
    expect(words.deep.list).toEqual(['a']);
    expect(words.date.getTime()).toBe(0);
  });
});
