import type { ComponentChildren } from 'preact';
import { CARRIED } from '../../../coaching/nextStep.ts';
import { practiceCounts, standingOf, uncounted } from '../../../coaching/notCounted.ts';
import { TARGET_MEASURES } from '../../../coaching/plan.ts';
import type { ProgressSession } from '../../../streaming/hubContract/students.ts';
import { h } from '../../strings/hub.ts';
import { t } from '../../strings/strings.ts';
import { useHub } from '../shell/hub.ts';
import { Course } from './Course.tsx';
import { MonthTable } from './MonthTable.tsx';
import { PlanSheet } from './PlanSheet.tsx';
import type { ReportData, Said } from './useReport.ts';
import { Own } from '../../shell/Own.tsx';

const words = h.report;

export interface SheetProps {
  readonly data: ReportData;
  /** The coach's own words; empty for none. */
  readonly own: string;
  readonly said: readonly Said[];
  readonly fromMs: number;
  readonly nowMs: number;
}

function Part({ title, children }: { title: string; children: ComponentChildren }) {
  return (
    <section class="sheet-part">
      <h3>{title}</h3>
      {children}
    </section>
  );
}

const newest = (
  sessions: readonly ProgressSession[],
  key: keyof ProgressSession['carryOver'],
): ProgressSession | undefined => sessions.findLast((s) => s.carryOver[key] !== null);

function CarryOver({ sessions }: { readonly sessions: readonly ProgressSession[] }) {
  const lines = (['addedFlexion', 'keptRotation'] as const).flatMap((key) => {
    const s = newest(sessions, key);
    const value = s?.carryOver[key];
    return s === undefined || value === null || value === undefined
      ? []
      : [words.carry(words[key], t.measures.percent(value, [CARRIED]), s.startedMs)];
  });
  return (
    <Part title={words.carryOver}>
      {lines.length === 0 ? (
        <p>{words.carryNone}</p>
      ) : (
        lines.map((line) => <p key={line}>{line}</p>)
      )}
      <p class="fine">{words.carryOverIs}</p>
    </Part>
  );
}

function SaidPart({ said }: { readonly said: readonly Said[] }) {
  if (said.length === 0) return null;
  const where = ({ comment, sessionMs }: Said): string =>
    comment.index === null
      ? h.shell.day(sessionMs)
      : `${h.shell.day(sessionMs)}, ${h.session.comments.pins.repetition(comment.index)}`;
  return (
    <Part title={words.said}>
      {said.map((one) => (
        <div key={one.comment.id} class="sheet-comment">
          <p class="fine">{words.saidBy(one.comment.by, one.comment.atMs, where(one))}</p>
          <p class="pre" dir="auto">
            {one.comment.text}
          </p>
        </div>
      ))}
    </Part>
  );
}

function Accuracy() {
  return (
    <Part title={words.accuracy}>
      <ul class="plain fine in-columns">
        {TARGET_MEASURES.map((measure) => {
          const { name, accuracy } = t.measures.info[measure];
          return <li key={measure}>{words.accuracyLine(name, accuracy.text, accuracy.source)}</li>;
        })}
      </ul>
      <p class="fine">{t.planPage.basis(t.names.targetBasis)}</p>
    </Part>
  );
}

function Cautions() {
  return (
    <Part title={words.cautions}>
      <p>
        <strong>{t.caution.short}</strong> {t.caution.rest}
      </p>
      <ul class="plain">
        {words.cautionLines.map((line) => (
          <li key={line}>{line}</li>
        ))}
      </ul>
    </Part>
  );
}

/** The report as it comes out of the printer. */
export function Sheet({ data, own, said, fromMs, nowMs }: SheetProps) {
  const { me } = useHub();
  const { student, progress, last } = data;
  const sessions = progress.sessions.filter(({ startedMs }) => startedMs >= fromMs);
  const others = practiceCounts(uncounted(progress.notCounted), fromMs - 1);
  const lessons = progress.lessons.filter(({ atMs }) => atMs >= fromMs);
  return (
    <article class="sheet" aria-label={words.title(student.name)}>
      <header class="sheet-head">
        <p class="fine">{words.head(me.club.name)}</p>
        <h2>
          <Own>{student.name}</Own>
        </h2>
        <p>{words.about(student.coach, fromMs, nowMs, nowMs)}</p>
        {sessions.some((s) => s.simulated) && <p class="badge">{words.simulated}</p>}
      </header>
      {own !== '' && (
        <Part title={words.toYou}>
          <p class="pre" dir="auto">
            {own}
          </p>
        </Part>
      )}
      <Part title={words.practice}>
        {sessions.length === 0 ? (
          standingOf(others) === 'none' && <p>{words.none}</p>
        ) : (
          <MonthTable sessions={sessions} />
        )}
        {t.counts.notCounted(others.notCounted).map((line) => (
          <p key={line}>{line}</p>
        ))}
      </Part>
      {sessions.length > 0 && (
        <Part title={words.measures}>
          <Course
            sessions={sessions}
            plans={progress.plans}
            lessons={lessons}
            plan={student.plan.plan}
            range={{ fromMs, toMs: nowMs }}
          />
        </Part>
      )}
      {sessions.length > 0 && <CarryOver sessions={sessions} />}
      <PlanSheet
        version={student.plan}
        last={last}
        versions={progress.plans.filter((v) => v.validFromMs >= fromMs)}
      />
      {lessons.length > 0 && (
        <Part title={words.lessons}>
          {lessons.map(({ id, atMs, text }) => (
            <p key={id}>
              <b>{h.shell.day(atMs)}</b> <Own>{text}</Own>
            </p>
          ))}
        </Part>
      )}
      <SaidPart said={said} />
      <Accuracy />
      <Cautions />
    </article>
  );
}
