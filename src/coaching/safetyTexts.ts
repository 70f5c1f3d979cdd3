import type { WarningId } from './judgement.ts';

/** Stands on the first screen, in the README and in the printed report. */
export const NOT_A_MEDICAL_DEVICE =
  'Training aid, not a medical device. It measures movement, not injury risk.';

export const OTHERS_COME_FIRST =
  "Stop on pain. Follow your local rules, your range's or club's rules and your licensed health professional; those come first.";

/** Signs that can need urgent care; anyone with one of these stops (Finucane et al. 2020). */
export const RED_FLAGS = [
  'weakness in a leg',
  'numbness around the saddle area',
  'a change of bladder or bowel control',
  'fever',
  'a major fall or blow',
  'chest pain',
  'a deformed or numb arm',
] as const;

export { PAIN_SIGNS, type PainSign } from '../sensors/sessionEvent.ts';

export interface SafetyText {
  /** `{pain}` stands for the rating. */
  readonly text: string;
  /** How well founded it is, and on what. */
  readonly evidence: string;
  readonly endsSession: boolean;
}

const PAIN_MODEL =
  'pain-monitoring model (Thomee 1997; Silbernagel 2007); the bands are from memory';

export const SAFETY_TEXTS: Record<WarningId, SafetyText> = {
  club: {
    text: 'Clear 3 m around you. No children, pets or onlookers. Closed shoes, soft floor, nothing breakable, enough ceiling. Start with a short or padded club.',
    evidence:
      'emergency-department series on club injuries (Macgregor 2002; Pennycook 1991; Vitale 2011)',
    endsSession: false,
  },
  history: {
    text: 'Dislocation, shoulder instability or surgery, back surgery, osteoporosis, pregnancy, recent injury: ask a licensed professional before this drill.',
    evidence: 'previous injury predicts the next',
    endsSession: false,
  },
  'warm-up': {
    text: 'Warm up for at least 10 minutes first. It may lower your injury risk.',
    evidence: 'weak to moderate',
    endsSession: false,
  },
  'pain-now': {
    text: 'You rated your pain {pain} of 10. Stop for today. If it is still there tomorrow, see a licensed health professional.',
    evidence: PAIN_MODEL,
    endsSession: false,
  },
  'pain-high': {
    text: 'Stop now and get advice from a licensed health professional before you practise again. This session ends here.',
    evidence: PAIN_MODEL,
    endsSession: true,
  },
  'pain-next-day': {
    text: 'Your pain has not settled. Rest or halve the repetitions; ask a licensed professional if it lasts.',
    evidence: PAIN_MODEL,
    endsSession: false,
  },
  'red-flag': {
    text: 'This can need urgent care. Stop and seek medical help now.',
    evidence: 'Finucane 2020',
    endsSession: true,
  },
  'own-range': {
    text: 'Your arm is near the end of the range you measured as comfortable. Do not force it.',
    evidence: 'weak to moderate; the sensor reads less than the arm turns',
    endsSession: false,
  },
  'trunk-own-range': {
    text: 'Your trunk is beyond the range you measured as comfortable. Do not force it.',
    evidence: 'weak; your own range only',
    endsSession: false,
  },
  volume: {
    text: 'That is more than your usual amount, or more than your plan. Most golf injuries come from overuse.',
    evidence: 'weak; the number is a convention',
    endsSession: false,
  },
  missed: {
    text: 'You missed two of the last five catches. Catch it earlier or use a lighter club.',
    evidence: 'common sense',
    endsSession: false,
  },
};
