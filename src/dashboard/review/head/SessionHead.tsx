import type { SafetyWarning } from '../../../coaching/judgement.ts';
import { summarise } from '../../../coaching/summary.ts';
import type { SessionDetail } from '../../../streaming/sessionsContract.ts';
import { t } from '../../strings/strings.ts';
import { sessionFacts } from '../../sessions/sessionFacts.ts';
import { type PlanKept, planKept } from './planKept.ts';
import { Own } from '../../shell/Own.tsx';

const words = t.review;

function mixText({ mix }: PlanKept): string {
  const { kept, balls, ballsInMix, asked } = mix;
  const asks = words.asked(asked.rehearsals, asked.balls);
  if (asked.balls === 0) return balls === 0 ? words.rehearsalsOnly : words.ballsNotAsked(balls);
  if (kept === null) return words.noBalls(asks);
  return kept ? words.mixKept(balls, asks) : words.mixNotKept(balls - ballsInMix, balls, asks);
}

const volumeText = ({ volume: { kept, done, most } }: PlanKept): string =>
  kept ? words.volumeKept(done, most) : words.volumeNotKept(done, most);

const weekText = ({ kept, done, most }: NonNullable<PlanKept['week']>): string =>
  kept ? words.weekKept(done, most) : words.weekNotKept(done, most);

function Kept({ kept, text }: { readonly kept: boolean | null; readonly text: string }) {
  const sign = kept === null ? '–' : kept ? '✓' : '✕';
  return (
    <li class={kept === false ? 'not-kept' : undefined}>
      <b aria-hidden="true">{sign}</b> {text}
    </li>
  );
}

function mixIsKept({ mix }: PlanKept): boolean | null {
  return mix.asked.balls === 0 ? mix.balls === 0 : mix.kept;
}

/** How a session is spoken of to somebody else than its student. */
export interface Spoken {
  /** Before the sentence on what to do next. */
  readonly step: string;
  readonly warning: (warning: SafetyWarning) => string;
}

const OF_ONESELF: Spoken = { step: t.after.next, warning: (w) => t.said.warning(w) };

/** The one sentence that the student got at the end: what to do next, of how many. */
function Step({ detail, step }: { readonly detail: SessionDetail; readonly step: string }) {
  const { analysis, plan } = detail;
  if (analysis === null) return null;
  const { repetitions, ledger, warnings } = analysis;
  return (
    <p class="next-step">
      <span class="label">{step}</span>{' '}
      {t.said.nextStep(summarise(repetitions, ledger, plan, warnings))}
    </p>
  );
}

/** What a session comes down to: the one thing to do next, and warnings. */
export function SessionHead(props: { readonly detail: SessionDetail; readonly spoken?: Spoken }) {
  const { detail, spoken = OF_ONESELF } = props;
  const { summary, analysis } = detail;
  return (
    <header class="review-head">
      <h1>{t.sessions.date(summary.startedAt)}</h1>
      <Step detail={detail} step={spoken.step} />
      {(analysis?.warnings.length ?? 0) > 0 && (
        <section aria-label={words.warnings}>
          {analysis?.warnings.map((w) => (
            <p key={`${w.id} ${w.atS}`} class="warned">
              {t.sessions.at(w.atS)} {spoken.warning(w)}
              {w.times !== undefined && ` (${t.after.cueTimes(w.times)})`}
            </p>
          ))}
        </section>
      )}
    </header>
  );
}

/** How a session went, and whether the plan was kept. */
export function SessionFacts({ detail }: { readonly detail: SessionDetail }) {
  const { summary, analysis, notes, painSigns = [] } = detail;
  const kept = planKept(detail);
  return (
    <section class="review-head">
      <p class="lead">
        {[
          ...sessionFacts(summary, false),
          t.sessions.length(summary.durationS),
          t.sessions.hand[summary.hand],
        ].join(' · ')}
      </p>
      {analysis !== null && (
        <ul class="plan-kept" aria-label={words.plan}>
          <Kept kept={mixIsKept(kept)} text={mixText(kept)} />
          <Kept kept={kept.volume.kept} text={volumeText(kept)} />
          {kept.week !== null && <Kept kept={kept.week.kept} text={weekText(kept.week)} />}
        </ul>
      )}
      {(notes.painBefore ?? notes.painAfter) !== null && (
        <p>{t.sessions.pain(notes.painBefore, notes.painAfter)}</p>
      )}
      {painSigns.length > 0 && <p>{t.home.painSigns(painSigns)}</p>}
      {notes.note !== '' && (
        <p>
          {t.sessions.note}: <Own>{notes.note}</Own>
          {typeof notes.editedMs === 'number' && (
            <>
              {' '}
              <span class="fine">({t.sessions.edited(notes.editedMs)})</span>
            </>
          )}
        </p>
      )}
    </section>
  );
}
