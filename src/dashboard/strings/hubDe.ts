import { club } from './de/hubClub.ts';
import { entry } from './de/hubEntry.ts';
import { needs } from './de/hubNeeds.ts';
import { news } from './de/hubNews.ts';
import { comparison, planChange } from './de/hubPlan.ts';
import { report } from './de/hubReport.ts';
import { session } from './de/hubSession.ts';
import { shell } from './de/hubShell.ts';
import { student } from './de/hubStudent.ts';
import type { HubStrings } from './hubShape.ts';

/** The same in German. */
export const hubDe: HubStrings = {
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
