import type { StudentRow } from '../../../streaming/hubContract/students.ts';
import { h } from '../../strings/hub.ts';
import { to } from '../shell/router.ts';
import { NeedShape } from './NeedShape.tsx';
import { firstNeed } from './order.ts';

const words = h.needs;

/** One student with the reasons in words. */
export function StudentLine({ s, nowMs }: { readonly s: StudentRow; readonly nowMs: number }) {
  const code = firstNeed(s);
  const [first, ...others] = s.needs;
  return (
    <li class="student-line" data-student={s.id}>
      <p class="need-sign">
        <NeedShape code={code} />
        <span>{words.names[code]}</span>
      </p>
      <div class="student-words">
        <h2>
          <a href={to('students', s.id)}>{s.name}</a>
        </h2>
        {first !== undefined && <p class="reason">{first.text}</p>}
        {others.length > 0 && <p class="fine">{others.map(({ text }) => text).join(' ')}</p>}
        <p class="fine">
          {words.last(s.lastPracticeMs, nowMs)} · {words.week(s.weekRehearsals, s.weekBalls)}
        </p>
      </div>
      {s.nextSessionId !== null && (
        <a class="button" href={to('sessions', s.nextSessionId)}>
          {words.toReview(s.unreviewed)}
          <span class="hidden">: {words.reviewOf(s.name)}</span>
        </a>
      )}
    </li>
  );
}
