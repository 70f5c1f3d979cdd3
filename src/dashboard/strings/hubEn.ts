import { club } from './en/hubClub.ts';
import { entry } from './en/hubEntry.ts';
import { needs } from './en/hubNeeds.ts';
import { news } from './en/hubNews.ts';
import { report } from './en/hubReport.ts';
import { session } from './en/hubSession.ts';
import { shell } from './en/hubShell.ts';
import { comparison, planChange, student } from './en/hubStudent.ts';

/** Every text of the hub's pages beside those of the practice, in English. */
export const hubEn = {
  shell,
  entry,
  needs,
  student,
  planChange,
  comparison,
  session,
  report,
  club,
  news,
};
