import type { Need, StudentRow } from '../../../streaming/hubContract/students.ts';
import { h } from '../../strings/hub.ts';
import { isolated } from '../../strings/isolated.ts';
import { t } from '../../strings/strings.ts';
import { to } from '../shell/router.ts';
import { NeedShape } from './NeedShape.tsx';
import { firstNeed } from './order.ts';
import { Own } from '../../shell/Own.tsx';

const words = h.needs;

/** Where the answer box of a student's words opens. */
const answerAddress = (sessionId: string, answerTo: string): string =>
  `${to('sessions', sessionId)}?answer=${encodeURIComponent(answerTo)}`;

/** What there is to do with the student first, and where; `null` where there is nothing. */
function nextAct(s: StudentRow): { readonly href: string; readonly label: string } | null {
  const [first] = s.needs;
  if (typeof first?.sessionId === 'string') {
    const { sessionId, answerTo } = first;
    return answerTo === null
      ? { href: to('sessions', sessionId), label: words.open }
      : { href: answerAddress(sessionId, answerTo), label: words.answer };
  }
  if (s.nextSessionId === null) return null;
  return { href: to('sessions', s.nextSessionId), label: words.toReview(s.unreviewed) };
}

/** The student's own words where they are the reason, else the reason. */
const wordsOf = ({ quote, text }: Need): string =>
  quote === null ? t.said.need(text) : words.quoted(quote);

function Reason({ need }: { readonly need: Need }) {
  const { atMs, sessionId } = need;
  const text = wordsOf(need);
  if (atMs === null || sessionId === null) return <Own>{text}</Own>;
  return (
    <a href={to('sessions', sessionId)}>
      <b>{words.on(atMs)}</b> <Own>{text}</Own>
    </a>
  );
}

/** The reasons after the first: their signs, and their words for who cannot see or points at them. */
function Others({ needs }: { readonly needs: readonly Need[] }) {
  return (
    <span class="other-needs">
      {needs.map((need, i) => (
        <span key={i} title={`${words.names[need.code]}: ${wordsOf(need)}`}>
          <NeedShape code={need.code} />
          <span class="hidden">{words.also(words.names[need.code], wordsOf(need))}</span>
        </span>
      ))}
    </span>
  );
}

/** One student in one line: what is needed, since when, and the way there. */
export function StudentLine({ s, nowMs }: { readonly s: StudentRow; readonly nowMs: number }) {
  const code = firstNeed(s);
  const [first, ...others] = s.needs;
  const act = nextAct(s);
  return (
    <li class="student-line" data-student={s.id}>
      <span class="need-sign">
        <NeedShape code={code} />
        <span class="need-name">{words.names[code]}</span>
      </span>
      <h3>
        <a href={to('students', s.id)} title={isolated(s.name)}>
          <Own>{s.name}</Own>
        </a>
      </h3>
      <p class="reason" title={first === undefined ? undefined : wordsOf(first)}>
        {first !== undefined && <Reason need={first} />}
      </p>
      <Others needs={others} />
      <span
        class="practised"
        title={[words.lastAndWeek(s, nowMs), ...t.counts.notCounted(s.weekNotCounted)].join(' ')}
      >
        <span class="hidden">{words.practised} </span>
        {words.last(s, nowMs)}
      </span>
      {act === null ? (
        <span />
      ) : (
        <a class="line-act" href={act.href}>
          {act.label}
          <span class="hidden">
            : <Own>{s.name}</Own>
          </span>
        </a>
      )}
    </li>
  );
}
