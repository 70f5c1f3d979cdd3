import { readFileSync, readdirSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { expect, it } from 'vitest';
import { recognise } from '../../src/sensors/sentence.ts';
import { API_TEXTS } from '../../src/streaming/apiTexts.ts';

const SOURCE = fileURLToPath(new URL('../../src/', import.meta.url));

/** Every sentence that stands in a `new Refused(status, code, …)`, a value in each place of a template. */
const refusals = readdirSync(SOURCE, { recursive: true, encoding: 'utf8' })
  .filter((file) => file.endsWith('.ts'))
  .flatMap((file) => [
    ...readFileSync(`${SOURCE}${file}`, 'utf8').matchAll(
      /new Refused\(\s*\d+,\s*'[\w-]+',\s*(?:'((?:[^'\\]|\\.)*)'|`((?:[^`\\]|\\.)*)`)/g,
    ),
  ])
  .map(([, text = '', template = '']) => text || template.replaceAll(/\$\{[^}]*\}/g, '7'));

it('has every sentence with which a request is refused', () => {
  expect(refusals.length).toBeGreaterThan(50);
  const missing = refusals.filter((sentence) => recognise(API_TEXTS, sentence) === null);
  expect(missing).toEqual([]);
});
