import type { JudgedRepetition } from '../../../coaching/judgement.ts';
import { t } from '../../strings/strings.ts';
import type { Example } from './examples.ts';

const words = t.review;

/** Typical, best and worst repetition, each with the rule that chose it. */
export function Examples(props: {
  readonly repetitions: readonly JudgedRepetition[];
  readonly examples: readonly Example[];
  readonly openOne: (index: number) => void;
}) {
  const { repetitions, examples, openOne } = props;
  if (!repetitions.some((r) => r.kind === 'rehearsal')) return null;
  return (
    <section>
      <h2>{words.examples}</h2>
      {examples.length === 0 && <p class="empty">{words.tooFewForExamples}</p>}
      <ul class="examples">
        {examples.map(({ name, index }) => (
          <li key={name}>
            <button type="button" onClick={() => openOne(index)}>
              {words.exampleOf(words.example[name], index)}
            </button>
          </li>
        ))}
      </ul>
      <p class="fine">{examples.map(({ rule }) => rule).join(' ')}</p>
    </section>
  );
}
