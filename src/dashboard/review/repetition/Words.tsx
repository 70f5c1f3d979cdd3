import type { JudgedRepetition } from '../../../coaching/judgement.ts';
import type { RepetitionFlag } from '../../../swings/repetition.ts';
import { t } from '../../strings/strings.ts';

const words = t.review.repetition;

/** Of 1; a choice. */
const CLEAR_CATCH = 0.5;

const sentence = (text: string): string => `${text.charAt(0).toUpperCase()}${text.slice(1)}.`;

function sureOf(r: JudgedRepetition): readonly string[] {
  if (r.kind === 'ball') return [words.ballNotJudged];
  if (r.kind === 'practiceSwing') return [words.swingNotJudged];
  const measured = r.flags.includes('release-measured');
  return [
    ...(measured ? [] : [words.releaseIs]),
    words.lastTimes,
    ...(r.catchS === null ? [] : [words.catchSure(r.catchConfidence >= CLEAR_CATCH)]),
  ];
}

/** The mark of a hand has a sentence of its own. */
const isSaid = (flag: RepetitionFlag): boolean => flag !== 'marked-by-hand';

const saidOf = (r: JudgedRepetition) => (r.marked?.ignored === true ? 'ignored' : r.kind);

/** Cue, flags and what is uncertain, in words. */
export function Words({ repetition: r }: { readonly repetition: JudgedRepetition }) {
  return (
    <section class="review-words">
      <h2>{words.know}</h2>
      {r.kind === 'rehearsal' && (
        <p>
          {words.cue}: <strong>{t.said.cue(r.verdict.cue)}</strong>
        </p>
      )}
      <ul>
        {r.flags.length === 0 && <li>{words.noFlags}</li>}
        {r.marked !== undefined && <li>{words.marked(r.marked.detected, saidOf(r))}</li>}
        {r.flags.filter(isSaid).map((flag) => (
          <li key={flag}>{sentence(t.names.flags[flag])}</li>
        ))}
        {sureOf(r).map((text) => (
          <li key={text}>{text}</li>
        ))}
      </ul>
    </section>
  );
}
