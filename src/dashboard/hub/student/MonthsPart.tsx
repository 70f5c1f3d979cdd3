import { useCallback } from 'preact/hooks';
import { ProgressView } from '../../progress/ProgressView.tsx';
import { useLive } from '../parts/useLive.ts';
import { h } from '../../strings/hub.ts';
import { Asked } from '../parts/Asked.tsx';
import { useHub } from '../shell/hub.ts';
import { to } from '../shell/router.ts';
import { lessonMarks, progressEntries } from './progressEntries.ts';

const words = h.student.months;

/** The months of one student, with lessons and changes of the plan. */
export function MonthsPart({ studentId }: { readonly studentId: string }) {
  const { client } = useHub();
  const answer = useLive(
    useCallback(() => client.students.progress(studentId), [client, studentId]),
  );
  return (
    <section class="part" aria-label={words.title}>
      <h2>{words.title}</h2>
      <Asked of={answer}>
        {(progress) =>
          progress.sessions.length + progress.notCounted.length === 0 ? (
            <p class="empty">{words.none}</p>
          ) : (
            <ProgressView
              sessions={progressEntries(progress)}
              notCounted={progress.notCounted}
              marks={lessonMarks(progress)}
              sessionHref={(id) => to('sessions', id)}
              now={new Date().toISOString()}
            />
          )
        }
      </Asked>
    </section>
  );
}
