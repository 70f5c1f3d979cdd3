/** What was asked of the golfer or marked by hand while the sensors ran; `trial_type` in events.tsv. */
export const SESSION_EVENT_TYPES = [
  'calibration-stand',
  'calibration-bow',
  'calibration-armRaise',
  'address-reference',
  'mark-ball',
  'mark-rehearsal',
  'mark-tap',
  'pain',
  'pause',
  'resume',
] as const;

export type SessionEventType = (typeof SESSION_EVENT_TYPES)[number];

export interface SessionEvent {
  readonly type: SessionEventType;
  /** Session clock, s. */
  readonly onsetS: number;
  /** s, 0 for an instant. */
  readonly durationS: number;
  /** For `pain` the rating 0-10; else `null`. */
  readonly value: number | null;
}
