import { CARRIED } from '../../coaching/nextStep.ts';
import type { PracticeSummary } from '../../coaching/summary.ts';
import type { SummaryView } from '../../streaming/contract.ts';
import { t } from '../strings/strings.ts';
import { Moments } from './Moments.tsx';

function Head({ summary, durationS }: SummaryView) {
  const { passed, scored, rehearsals, mix } = summary;
  const minutes = Math.max(1, Math.round(durationS / 60)).toFixed(0);
  return (
    <section class="summary-head">
      <p class="big">{scored === 0 ? t.after.nothingScored : t.after.passed(passed, scored)}</p>
      <p>
        {t.after.facts(t.ledger.rehearsals(rehearsals), t.ledger.balls(mix.ledger.balls), minutes)}
      </p>
      <p class="next-step">
        <span class="label">{t.after.next}</span>
        {t.said.nextStep(summary)}
      </p>
    </section>
  );
}

function MeasureLine({ line }: { readonly line: PracticeSummary['byMeasure'][number] }) {
  const { measure, passed, failed, median } = line;
  const all = passed + failed;
  const share = all === 0 ? 0 : (100 * passed) / all;
  return (
    <li>
      <span class="line-name">{t.measures.info[measure].name}</span>
      <span class="share" aria-hidden="true">
        <i style={{ width: `${share}%` }} />
      </span>
      <span>{t.after.passed(passed, all)}</span>
      <span class="fine">
        {median === null ? '' : `${t.after.median} ${t.measures.value(measure, median)}`}
      </span>
    </li>
  );
}

const ratioText = (ratio: number | null): string =>
  ratio === null ? t.after.tooLittle : t.measures.percent(ratio, [CARRIED]);

function Facts({ summary }: Pick<SummaryView, 'summary'>) {
  const { mostFrequentCue: cue, mix, carryOver, scored } = summary;
  const noCue = scored === 0 ? t.after.tooLittle : t.after.noCue;
  const { balls, ballsInMix } = mix.ledger;
  return (
    <dl class="facts">
      <dt>{t.after.cue}</dt>
      <dd>{cue === null ? noCue : `${t.said.cue(cue.cue)} (${t.after.cueTimes(cue.count)})`}</dd>
      <dt>{t.after.mix}</dt>
      <dd>{balls === 0 ? t.after.noBalls : t.after.mixKept(ballsInMix, balls)}</dd>
      <dt>{t.after.carryOver}</dt>
      <dd>
        {t.after.carry.addedFlexion}: {ratioText(carryOver.addedFlexion)};{' '}
        {t.after.carry.keptRotation}: {ratioText(carryOver.keptRotation)}
      </dd>
    </dl>
  );
}

/** Best and typical repetition; once where they are the same. */
function Examples({ best, typical }: SummaryView) {
  if (best === null || typical === null) return null;
  if (best.index === typical.index) {
    return <Moments title={t.after.bestAndTypical} rule={t.after.bestRule} moments={best} />;
  }
  return (
    <>
      <Moments title={t.after.best} rule={t.after.bestRule} moments={best} />
      <Moments title={t.after.typical} rule={t.after.typicalRule} moments={typical} />
    </>
  );
}

/** What a person wants to know at the end. */
export function Summary({ summary }: { readonly summary: SummaryView }) {
  const { summary: s } = summary;
  return (
    <div class="summary" data-testid="summary">
      <Head {...summary} />
      {s.scored > 0 && (
        <section>
          <h2>{t.after.byMeasure}</h2>
          <ul class="by-measure">
            {s.byMeasure.map((line) => (
              <MeasureLine key={line.measure} line={line} />
            ))}
          </ul>
          <p class="fine">{t.planPage.basis(t.names.targetBasis)}</p>
        </section>
      )}
      <Facts summary={s} />
      <Examples {...summary} />
    </div>
  );
}
