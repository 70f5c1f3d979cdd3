import { count as counted } from './count.ts';

/** How far a session is. */
export const count = {
  done: (done: number, goal: number) => `${done} of ${counted(goal, 'repetition')}`,
  row: (n: number) => `${n} in a row`,
  rowSpoken: (n: number) => `Good. ${n} in a row.`,
  reached: 'Goal reached',
  rest: 'Half of the repetitions are done. Rest for a minute or two.',
  restSpoken: 'Half done. Take a short rest.',
};

/** The service was started again in the middle of a practice. */
export const interrupted = {
  title: 'Your practice was interrupted',
  spoken: 'Your practice was interrupted.',
  kept: 'The program on this computer was restarted. Everything recorded until then is saved.',
  nothing: 'The program on this computer was restarted. Nothing had been recorded yet.',
  open: 'Open the recorded practice',
  close: 'Close',
};
