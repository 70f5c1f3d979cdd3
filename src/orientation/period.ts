/**
 * The sample period of one sensor, learned from its own times: no rate is assumed anywhere.
 * Small differences are followed; a step that is far off is a loss, unless a run of equal steps
 * shows that the rate has changed.
 */
export interface PeriodState {
  /** s; 0 before the second sample. */
  periodS: number;
  /** A step far from the period, and how many like it came in a row. */
  oddS: number;
  oddCount: number;
  /** Sum and number of the regular steps: what was measured. */
  regularS: number;
  regularCount: number;
}

export const createPeriod = (): PeriodState => ({
  periodS: 0,
  oddS: 0,
  oddCount: 0,
  regularS: 0,
  regularCount: 0,
});

// A step within this part of the period is one period (millisecond stamps at 104 Hz scatter by 6 %).
const LIKE = 0.3;
const FOLLOW = 0.05;
// Equal steps in a row that make a new period; a faster rate cannot be a loss and is believed sooner.
const RUN_SLOWER = 8;
const RUN_FASTER = 3;
const RUN_EARLY = 2;

const isLike = (dtS: number, otherS: number): boolean => Math.abs(dtS - otherS) <= LIKE * otherS;

/** How many periods `dtS` spans: 1 where nothing is lost or nothing is known yet. */
export const spansOf = ({ periodS }: PeriodState, dtS: number): number =>
  periodS > 0 ? Math.max(1, Math.round(dtS / periodS)) : 1;

/** Takes the time between two samples, s, and returns how many periods it spans. */
export function stepPeriod(state: PeriodState, dtS: number): number {
  if (state.periodS === 0) state.periodS = dtS;
  if (isLike(dtS, state.periodS)) {
    state.periodS += FOLLOW * (dtS - state.periodS);
    state.oddCount = 0;
  } else countOdd(state, dtS);
  const spans = spansOf(state, dtS);
  if (spans === 1) {
    state.regularS += dtS;
    state.regularCount += 1;
  }
  return spans;
}

function countOdd(state: PeriodState, dtS: number): void {
  if (state.oddCount > 0 && isLike(dtS, state.oddS)) state.oddCount += 1;
  else {
    state.oddS = dtS;
    state.oddCount = 1;
  }
  const early = state.regularCount < RUN_SLOWER;
  if (state.oddCount < (early ? RUN_EARLY : dtS < state.periodS ? RUN_FASTER : RUN_SLOWER)) return;
  state.periodS = dtS;
  state.oddCount = 0;
}

/** Hz; `null` before the second sample. */
export const measuredRate = (state: PeriodState): number | null =>
  state.regularCount > 0 ? state.regularCount / state.regularS : null;
