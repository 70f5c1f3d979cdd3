import { coach } from './help/coach.ts';
import { page } from './help/page.ts';
import { student } from './help/student.ts';

/** Hilfe für Schüler und Coach. */
export const help = { page, student, coach };
