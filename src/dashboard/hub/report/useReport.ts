import { useCallback } from 'preact/hooks';
import type { Comment, HubSessionRow } from '../../../streaming/hubContract/review.ts';
import type {
  HubProgress,
  LastValues,
  StudentView,
} from '../../../streaming/hubContract/students.ts';
import { type Answer, useAnswer } from '../../review/useAnswer.ts';
import type { HubClient } from '../client/client.ts';
import { useHub } from '../shell/hub.ts';

/** So many of the newest sessions with comments are looked through. */
const MOST_SESSIONS = 12;

export interface Said {
  readonly comment: Comment;
  readonly sessionMs: number;
}

export interface ReportData {
  readonly student: StudentView;
  readonly progress: HubProgress;
  readonly last: LastValues;
  readonly said: readonly Said[];
}

async function commented(
  client: HubClient,
  id: string,
  fromMs: number,
): Promise<readonly HubSessionRow[]> {
  const { sessions } = await client.students.sessions(id, null);
  return sessions
    .filter(({ comments, summary }) => comments > 0 && Date.parse(summary.startedAt) >= fromMs)
    .slice(0, MOST_SESSIONS);
}

async function saidSince(client: HubClient, id: string, fromMs: number): Promise<readonly Said[]> {
  const rows = await commented(client, id, fromMs);
  const sessions = await Promise.all(
    rows.map(({ summary }) => client.sessions.session(summary.id)),
  );
  return sessions.flatMap(({ comments, summary }) =>
    comments.map((comment) => ({ comment, sessionMs: Date.parse(summary.startedAt) })),
  );
}

async function fetchReport(client: HubClient, id: string, fromMs: number): Promise<ReportData> {
  const [student, progress, last, said] = await Promise.all([
    client.students.student(id),
    client.students.progress(id),
    client.students.lastValues(id),
    saidSince(client, id, fromMs),
  ]);
  return { student, progress, last, said };
}

export function useReport(id: string, fromMs: number): Answer<ReportData> {
  const { client } = useHub();
  return useAnswer(useCallback(() => fetchReport(client, id, fromMs), [client, id, fromMs]));
}
