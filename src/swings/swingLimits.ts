/** Choices of the design: s, deg, deg/s, m/s^2. */
export const SWING = {
  /** Who swings back slowly counts as still for so long after the start and before the top. */
  slowlyStillS: 1,
  /** Shorter is no hold. */
  shortestHoldS: 0.3,
  /** Peak turn speed of a full swing. */
  fullSwingDegPerS: 250,
  /** A full swing comes at least this near to the address heading. */
  throughDeg: -15,
  /** After a hold it has to go well past it: a rehearsal stops near the address. */
  throughAfterHoldDeg: 15,
  /** A ball's shock at the upper arm is larger than any catch's. */
  ballShock: 6.5,
  /** One that can be no catch, where nothing of the movement itself was seen. Simulated: catches to 9, balls from 19. */
  surelyBallShock: 13,
  /** Where the blow of a ball is looked for about the fastest turn. */
  impactBeforePeakS: 0.06,
  impactAfterPeakS: 0.2,
  /** A blow rings this long; where the arm was silent for longer it may have gone unseen. */
  blowS: 0.03,
  /** A rehearsal is a quick movement: peak within this time of its start; calm lowering takes longer. */
  quickRiseS: 0.42,
  /** No catch sooner than this after the release. */
  earliestCatchS: 0.08,
  /** The start of the arm's own movement is a jolt of its own for so long. */
  armStartsS: 0.05,
  /** Who lets go before the chest starts does so by at most this. */
  letGoBeforeChestS: 0.3,
  /** After this the club has landed. */
  landedS: 0.55,
  /** Where no catch was seen, measures are taken here. */
  assumedCatchS: 0.4,
  /** Under this lead chest and arm start together. */
  togetherMs: 20,
} as const;
