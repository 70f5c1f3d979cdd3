import { useState } from 'preact/hooks';
import { DEFAULT_PLAN, type Plan } from '../../../coaching/plan.ts';
import { browserDrafts } from '../../drafts/drafts.ts';
import { type DraftState, useDraft } from '../../drafts/useDraft.ts';
import { type PlanDraft, draftOf, keptDraft } from '../../plan/draft.ts';
import { dayInput, dayStart } from '../parts/days.ts';
import { useHub } from '../shell/hub.ts';
import type { PlanDesk } from './desk.ts';
import { startsOf } from './starts.ts';

/** The next version while it is written. */
export interface Written {
  readonly draft: PlanDraft;
  /** Id of what it was started from. */
  readonly from: string;
  /** As a date input has it. */
  readonly day: string;
  /** Number of the newest version when it was begun. */
  readonly basedOn: number;
}

/** The version or template that the address asks to start from. */
function askedStart(desk: PlanDesk): string {
  const asked = new URLSearchParams(location.hash.split('?')[1] ?? '').get('from');
  return startsOf(desk).find(({ id }) => id === asked)?.id ?? desk.student.plan.id;
}

export const planFrom = (desk: PlanDesk, id: string): Plan =>
  startsOf(desk).find((start) => start.id === id)?.plan ?? desk.student.plan.plan;

/** The version that the writer began with. */
export const basePlan = (desk: PlanDesk, basedOn: number): Plan =>
  desk.versions.find(({ number }) => number === basedOn)?.plan ?? DEFAULT_PLAN;

function begin(desk: PlanDesk): Written {
  const from = askedStart(desk);
  const basedOn = desk.versions[0]?.number ?? 0;
  return { draft: draftOf(planFrom(desk, from)), from, day: dayInput(Date.now()), basedOn };
}

/** A day that has passed since it was typed becomes today. */
function readWritten(kept: unknown): Written | null {
  const { draft, from, day, basedOn } = (kept ?? {}) as Partial<Written>;
  const plan = keptDraft(draft);
  if (plan === null || typeof from !== 'string' || typeof basedOn !== 'number') return null;
  const today = dayInput(Date.now());
  const later = typeof day === 'string' && dayStart(day) !== null && day > today;
  return { draft: plan, from, day: later ? day : today, basedOn };
}

/** What the coach is writing; it outlives the page. */
export function useWritten(desk: PlanDesk): DraftState<Written> {
  const { me } = useHub();
  const [beginning] = useState(() => begin(desk));
  return useDraft(browserDrafts(me.id), `plan of ${desk.student.id}`, beginning, readWritten);
}
