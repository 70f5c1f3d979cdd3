import type { StopId } from '../../../streaming/contract.ts';

/** What *Today* says on the day of a stop, before anything is started. */
export const stop = {
  title: 'You stopped today',
  /** @param time of day, as it is written here */
  at: (time: string) => `at ${time}`,
  text: {
    'red-flag':
      'You answered yes to a sign that can need urgent care. Do not practise. Seek medical help now.',
    'pain-high':
      'Your pain was too high to practise. Get advice from a licensed health professional before you practise again.',
    'pain-now':
      'Your pain asked for a stop. Rest today. If it is still there tomorrow, see a licensed health professional.',
  } satisfies Record<StopId, string>,
  read: 'I have read this',
};

/** The questions and confirmations before each session. */
export const safetyForm = {
  yes: 'Yes',
  no: 'No',
  yesStops: 'Yes ends the practice at once.',
  answerSigns: 'Answer the question about signs first.',
  answerHistory: 'Answer the question about earlier injuries first.',
  historyAsk: 'Does one of these apply to you?',
  historyAnswers: { no: 'No', asked: 'Yes, I have asked', notAsked: 'Yes, not asked yet' },
  ready: 'Check and tick',
};
