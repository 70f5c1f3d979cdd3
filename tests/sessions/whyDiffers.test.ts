import { describe, expect, it } from 'vitest';
import type { AnalysisResult } from '../../src/analysis/result.ts';
import { DEFAULT_PLAN } from '../../src/coaching/plan.ts';
import { judgeRehearsal } from '../../src/coaching/judge.ts';
import { whyDiffers } from '../../src/sessions/whyDiffers.ts';
import { rehearsal } from '../coaching/repetitions.ts';

const MADE = { version: '1.0.0', analysis: 2, events: 5 };
const NOT_ASKED = { plan: false, finalClock: false };

function resultWith(changes: Partial<AnalysisResult> = {}, plan = DEFAULT_PLAN): AnalysisResult {
  const r = rehearsal();
  return {
    repetitions: [{ ...r, verdict: judgeRehearsal(r, plan) }],
    warnings: [],
    madeBy: MADE,
    ...changes,
  } as unknown as AnalysisResult;
}

const OTHER = { warnings: [{ id: 'volume', atS: 1, text: 'Rest.' }] } as const;

describe('Why a result differs from the kept one', () => {
  it('is not said where every number agrees, whoever made it', () => {
    const older = resultWith({ madeBy: { ...MADE, version: '0.9.0' } });
    expect(whyDiffers(resultWith(), older, NOT_ASKED)).toBeNull();
  });

  it.each([
    [resultWith(), { plan: true, finalClock: false }, '(--plan)'],
    [resultWith(), { plan: false, finalClock: true }, '(--clock final)'],
    [
      resultWith({ madeBy: { ...MADE, version: '0.9.0', analysis: 1 } }),
      NOT_ASKED,
      'made by version 0.9.0 (analysis 1), this one by version 1.0.0 (analysis 2)',
    ],
    [
      resultWith({ madeBy: { ...MADE, events: 3 } }),
      NOT_ASKED,
      '2 events (marks, pain) came later',
    ],
    [resultWith(), NOT_ASKED, 'files of the recording were changed'],
  ])('names the version, the later answer or what was asked (%#)', (kept, asked, words) => {
    const said = whyDiffers(resultWith(OTHER), kept, asked)!;
    expect(said).toContain(words);
    expect(said).toMatch(/^This result differs from the one kept with the recording: [^.]*.*\.$/);
  });

  it('names a result whose version is not known, and a plan that was changed', () => {
    const nameless = JSON.parse(
      JSON.stringify({ ...resultWith(OTHER), madeBy: undefined }),
    ) as AnalysisResult;
    expect(whyDiffers(resultWith(), nameless, NOT_ASKED)).toContain('older version');
    const stricter = {
      ...DEFAULT_PLAN,
      targets: { ...DEFAULT_PLAN.targets, holdS: { min: 0.5 } },
    };
    expect(whyDiffers(resultWith(), resultWith({}, stricter), NOT_ASKED)).toContain('plan');
  });
});
