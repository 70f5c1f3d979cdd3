import type { SessionDetail } from '../../../streaming/sessionsContract.ts';
import { t } from '../../strings/strings.ts';
import { Sensors } from './Sensors.tsx';
import { type PlanKept, planKept } from './planKept.ts';

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

/** What a session was: warnings first, then how it went and whether the plan was kept. */
export function SessionHead({ detail }: { readonly detail: SessionDetail }) {
  const { summary, analysis, notes, painSigns = [] } = detail;
  const kept = planKept(detail);
  return (
    <header class="review-head">
      <h1>{t.sessions.date(summary.startedAt)}</h1>
      {(analysis?.warnings.length ?? 0) > 0 && (
        <section aria-label={words.warnings}>
          {analysis?.warnings.map((w) => (
            <p key={`${w.id} ${w.atS}`} class="warned">
              {t.sessions.at(w.atS)} {t.said.warning(w)}
              {w.times !== undefined && ` (${t.after.cueTimes(w.times)})`}
            </p>
          ))}
        </section>
      )}
      <p class="lead">
        {t.sessions.passed(summary.passed, summary.scored)} ·{' '}
        {t.sessions.balls(summary.ballsInMix, summary.balls)} ·{' '}
        {t.sessions.length(summary.durationS)} · {t.sessions.hand[summary.hand]}
        {summary.simulated && ` · ${summary.counts ? t.sessions.simulated : t.sessions.notCounted}`}
        {summary.state !== 'complete' && ` · ${t.sessions.states[summary.state]}`}
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
          {t.sessions.note}: {notes.note}
        </p>
      )}
      {analysis !== null && <Sensors quality={analysis.quality} />}
    </header>
  );
}
