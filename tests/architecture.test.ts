import { readFileSync, readdirSync } from 'node:fs';
import { join, relative } from 'node:path';
import { describe, expect, it } from 'vitest';

const SRC = join(import.meta.dirname, '../src');
const PURE =
  /^(math|orientation|body|swings|coaching|analysis|sensors\/(decode|clock))\/|^sensors\/[^/]+$/;
/** The path of the data: a folder may take from itself and from those before it. */
const PATH = [
  'math',
  'sensors',
  'orientation',
  'body',
  'swings',
  'coaching',
  'analysis',
  'practice',
  'sessions',
  'streaming',
  'sending',
  'dashboard',
  'hub',
  'main',
];

const files = readdirSync(SRC, { recursive: true, encoding: 'utf8' })
  .filter((f) => /\.tsx?$/.test(f))
  .map((f) => ({ name: f, text: readFileSync(join(SRC, f), 'utf8') }));

const importsOf = (text: string): string[] =>
  [...text.matchAll(/(?:from|import)\s+'([^']+)'/g)].map((m) => m[1] ?? '');

describe('the folders are the path of the data', () => {
  it('has all its folders', () => {
    const there = new Set(files.map((f) => f.name.split('/')[0]));
    for (const folder of PATH) expect(there).toContain(folder);
  });

  it('imports upwards only', () => {
    for (const { name, text } of files) {
      const own = PATH.indexOf(name.split('/')[0] ?? '');
      for (const path of importsOf(text).filter((i) => i.startsWith('.'))) {
        const target = relative(SRC, join(SRC, name, '..', path));
        expect(
          PATH.indexOf(target.split('/')[0] ?? ''),
          `${name} takes ${path}`,
        ).toBeLessThanOrEqual(own);
      }
    }
  });

  it('keeps pure folders free of packages, clocks and chance', () => {
    const pure = files.filter((f) => PURE.test(f.name));
    expect(pure.length).toBeGreaterThan(60);
    for (const { name, text } of pure) {
      const packages = importsOf(text).filter((i) => !i.startsWith('.'));
      expect(packages, name).toEqual(name === 'orientation/ahrsFilter.ts' ? ['ahrs'] : []);
      expect(text, name).not.toMatch(
        /Math\.random|Date\.now|new Date|performance\.|setTimeout|process\./,
      );
    }
  });

  it('takes rxjs in practice only and noble in the radio only', () => {
    for (const { name, text } of files) {
      const packages = importsOf(text).filter((i) => !i.startsWith('.'));
      if (!name.startsWith('practice/')) expect(packages, name).not.toContain('rxjs');
      if (!name.startsWith('sensors/sources/ble/'))
        expect(text, name).not.toMatch(/import\(?\s*'@abandonware\/noble/);
    }
  });
});
