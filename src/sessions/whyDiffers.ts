import { isDeepStrictEqual } from 'node:util';
import type { AnalysisResult, JudgedRepetition } from '../analysis/result.ts';

/** What was asked of an analysis that the kept result was made without. */
export interface Asked {
  /** A plan was given by hand. */
  readonly plan: boolean;
  /** The times were fitted anew over the whole recording. */
  readonly finalClock: boolean;
}

/**
 * Why a recording that is analysed again gives another result than the one kept with it, in a sentence;
 * `null` where they agree to the last digit.
 */
export function whyDiffers(
  again: AnalysisResult,
  kept: AnalysisResult,
  asked: Asked,
): string | null {
  if (isDeepStrictEqual(numbersOf(again), numbersOf(kept))) return null;
  const reasons = [
    ...(asked.plan ? ['another plan was given (--plan)'] : []),
    ...(asked.finalClock ? ['times are fitted anew over the whole recording (--clock final)'] : []),
    ...versionReasons(again, kept),
    ...eventReasons(again, kept),
    ...(!asked.plan && targetsDiffer(again, kept)
      ? ['the plan kept with the recording was changed later']
      : []),
  ];
  const why =
    reasons.length > 0
      ? reasons.join('; ')
      : 'files of the recording were changed after it was made';
  return `This result differs from the one kept with the recording: ${why}.`;
}

/** Without what says where they are from; as JSON, which knows no negative zero. */
function numbersOf({ madeBy: _made, differsFromKept: _differs, ...numbers }: AnalysisResult) {
  return JSON.parse(JSON.stringify(numbers)) as unknown;
}

const named = ({ madeBy }: AnalysisResult): string | null =>
  madeBy === undefined ? null : `version ${madeBy.version} (analysis ${madeBy.analysis})`;

function versionReasons(again: AnalysisResult, kept: AnalysisResult): readonly string[] {
  const [here, there] = [named(again), named(kept)];
  if (here === there) return [];
  return [
    `the kept one was made by ${there ?? 'an older version that does not name itself'}, this one by ${here ?? 'a version that does not name itself'}`,
  ];
}

function eventReasons(again: AnalysisResult, kept: AnalysisResult): readonly string[] {
  if (again.madeBy === undefined || kept.madeBy === undefined) return [];
  const later = again.madeBy.events - kept.madeBy.events;
  if (later === 0) return [];
  const events = Math.abs(later) === 1 ? 'one event' : `${Math.abs(later)} events`;
  return [
    later > 0
      ? `${events} (marks, pain) came later than the kept one`
      : `${events} (marks, pain) were taken out later`,
  ];
}

const targetsOf = (r: JudgedRepetition | undefined) =>
  r?.kind === 'rehearsal'
    ? r.verdict.checks.map(({ measure, target }) => ({ measure, target: { ...target } }))
    : null;

const targetsDiffer = (again: AnalysisResult, kept: AnalysisResult): boolean =>
  again.repetitions.some((r, i) => {
    const [here, there] = [targetsOf(r), targetsOf(kept.repetitions[i])];
    return here !== null && there !== null && !isDeepStrictEqual(here, there);
  });
