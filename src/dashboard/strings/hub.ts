import { club } from './en/hubClub.ts';
import { entry } from './en/hubEntry.ts';
import { needs } from './en/hubNeeds.ts';
import { news } from './en/hubNews.ts';
import { report } from './en/hubReport.ts';
import { session } from './en/hubSession.ts';
import { shell } from './en/hubShell.ts';
import { student } from './en/hubStudent.ts';

/** Every text of the hub's pages beside those of the practice. */
export const h = { shell, entry, needs, student, session, report, club, news };
