import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, expect, it } from 'vitest';
import type { AnalysisResult } from '../../src/analysis/result.ts';
import { analysisProblem } from '../../src/sessions/analysisSchema.ts';
import { cli } from './run.ts';

const place = mkdtempSync(join(tmpdir(), 'stillcatch-club-'));
afterAll(() => rmSync(place, { recursive: true, force: true }));

it('a recording with a third sensor on the club is written, read, and says what it measured', async () => {
  const zip = join(place, 'club.zip');
  const made = await cli(...['simulate', '--club', '--seed', '5', '--script', 'r', '--out', zip]);
  expect(made).toEqual({ code: 0, out: '', err: '' });
  const { code, out } = await cli('analyse', zip, '--json');
  expect(code).toBe(0);
  const result = JSON.parse(out) as AnalysisResult;
  expect(analysisProblem(result)).toBeNull();
  expect(result.repetitions[0]?.flags).toContain('release-measured');
});
