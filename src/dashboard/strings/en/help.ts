import { coach } from './help/coach.ts';
import { page } from './help/page.ts';
import { student } from './help/student.ts';

/** Help for student and coach. */
export const help = { page, student, coach };
