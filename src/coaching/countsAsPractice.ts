/** Where a session came from. */
export interface Origin {
  /** The sensors were simulated: nobody moved. */
  readonly simulated: boolean;
  /** A recording was played back: its movement was counted when it was made. */
  readonly watched?: boolean;
}

/**
 * Whether a session is a person's practice: only then it counts in the volume of the week, last values, progress, plan
 * and needs. All sessions are listed. A demonstration club has simulated sessions only, says so on every page, and
 * counts them so that there is something to see.
 */
export const countsAsPractice = (
  { simulated, watched = false }: Origin,
  demonstration = false,
): boolean => !watched && (!simulated || demonstration);
