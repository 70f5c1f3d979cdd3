import { describe, expect, it } from 'vitest';
import {
  LINE_PATTERN,
  WORDS_PATTERN,
  isOneLine,
  isWords,
  plainWords,
} from '../../src/sensors/plainText.ts';
import { cpuMs } from '../sessions/cpuMs.ts';

const asLine = (text: string): boolean => new RegExp(LINE_PATTERN, 'u').test(text);
const asWords = (text: string): boolean => new RegExp(WORDS_PATTERN, 'u').test(text);

const NEITHER = ['a\0b', 'a\u001b[31m', 'a\u0085', 'a\u2028b', 'a\u202egpj', 'a\u2066b', 'a\u007f'];
const WORDS_ONLY = ['a\nb', 'a\tb', 'a\r\nb', 'soft\u00adly', 'a\u200fb', 'a\ufeffb'];
const BOTH = ['Jörg', 'O’Neill', '李 明', 'عمر', '👩‍👧', ' a ', 'a:b/c'];

describe('the one rule for lines and words', () => {
  it('takes out of a line what breaks it, turns it or is not seen', () => {
    for (const text of BOTH) expect([asLine(text), isOneLine(text)], text).toEqual([true, true]);
    for (const text of [...NEITHER, ...WORDS_ONLY])
      expect([asLine(text), isOneLine(text)], JSON.stringify(text)).toEqual([false, false]);
  });

  it('leaves words their lines', () => {
    for (const text of [...BOTH, ...WORDS_ONLY])
      expect([asWords(text), isWords(text), plainWords(text)]).toEqual([true, true, text]);
    for (const text of NEITHER)
      expect([asWords(text), isWords(text), isWords(plainWords(text))]).toEqual([
        false,
        false,
        true,
      ]);
  });

  it('wants something to be seen', () => {
    expect([asLine(' '), asWords('\n'), asLine(''), isOneLine('')]).toEqual([
      false,
      false,
      false,
      true,
    ]);
  });

  it('reads a text once, whatever stands at its end', () => {
    const long = (length: number) => (): unknown => asLine(`${'a'.repeat(length)}\0`);
    const short = cpuMs(long(10_000), 100);
    expect(cpuMs(long(1_000_000))).toBeLessThan(20 * short + 200);
  });
});
