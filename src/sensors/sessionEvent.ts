/** What was asked of the golfer or marked by hand while the sensors ran; `trial_type` in events.tsv. */
export const SESSION_EVENT_TYPES = [
  'calibration-stand',
  'calibration-bow',
  'calibration-armRaise',
  'address-reference',
  'recheck-stand',
  'recheck-bow',
  'recheck-armRaise',
  'mark-ball',
  'mark-rehearsal',
  'mark-practiceSwing',
  'mark-ignore',
  'mark-undo',
  'mark-tap',
  'pain',
  'pause',
  'resume',
] as const;

export type SessionEventType = (typeof SESSION_EVENT_TYPES)[number];

/** Kinds of pain that end a session at any rating. */
export const PAIN_SIGNS = ['sharp', 'locking', 'giving way', 'numb'] as const;
export type PainSign = (typeof PAIN_SIGNS)[number];

export interface SessionEvent {
  readonly type: SessionEventType;
  /** Session clock, s. */
  readonly onsetS: number;
  /** s, 0 for an instant. */
  readonly durationS: number;
  /** For `pain` the rating 0-10; else `null`. */
  readonly value: number | null;
  /** For `pain` what it was like; left out where it was none of these. */
  readonly signs?: readonly PainSign[];
}
