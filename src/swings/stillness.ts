/** Thresholds on the RMS angular speed over the window; leaving takes more than entering (Skog et al. 2010; numbers are a choice). */
const WINDOW_S = 0.2;
const CHEST_STILL = 11;
const ARM_STILL = 18;
const HYSTERESIS = 1.5;

/** Running mean squares over the last 0.2 s. Plain data. */
export interface StillnessState {
  times: number[];
  chest: number[];
  arm: number[];
  chestSum: number;
  armSum: number;
  still: boolean;
  /** Session s since when it has been still: the start of the first window that was; `null` while moving. */
  sinceS: number | null;
}

export const createStillness = (): StillnessState => ({
  times: [],
  chest: [],
  arm: [],
  chestSum: 0,
  armSum: 0,
  still: false,
  sinceS: null,
});

/** Takes one pair of angular speeds (deg/s); says whether both segments are still now. */
export function stepStillness(
  s: StillnessState,
  timeS: number,
  chestSpeed: number,
  armSpeed: number,
): boolean {
  push(s, timeS, chestSpeed * chestSpeed, armSpeed * armSpeed);
  const n = s.times.length;
  const k = s.still ? HYSTERESIS : 1;
  const quiet = s.chestSum <= n * (CHEST_STILL * k) ** 2 && s.armSum <= n * (ARM_STILL * k) ** 2;
  const full = timeS - (s.times[0] ?? timeS) >= 0.75 * WINDOW_S;
  if (quiet && full && !s.still) {
    s.still = true;
    s.sinceS = s.times[0] ?? timeS;
  }
  if (!quiet) {
    s.still = false;
    s.sinceS = null;
  }
  return s.still;
}

function push(s: StillnessState, timeS: number, chest: number, arm: number): void {
  s.times.push(timeS);
  s.chest.push(chest);
  s.arm.push(arm);
  s.chestSum += chest;
  s.armSum += arm;
  while (timeS - (s.times[0] ?? timeS) > WINDOW_S) {
    s.times.shift();
    s.chestSum = Math.max(0, s.chestSum - (s.chest.shift() ?? 0));
    s.armSum = Math.max(0, s.armSum - (s.arm.shift() ?? 0));
  }
}
