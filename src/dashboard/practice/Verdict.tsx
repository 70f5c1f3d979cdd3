import type { JudgedRepetition } from '../../analysis/result.ts';
import { useSection } from '../feed/hooks.ts';
import { t } from '../strings/strings.ts';
import { type Mark, markOf } from './kind.ts';
import { Shape } from './shapes.tsx';

const entryOf = (r: JudgedRepetition): Mark =>
  markOf({ kind: r.kind, passed: r.kind === 'rehearsal' ? r.verdict.passed : null });

function cueOf(r: JudgedRepetition): string {
  if (r.kind === 'rehearsal') return t.said.cue(r.verdict.cue);
  return r.kind === 'ball' ? t.verdict.ballDetail : t.verdict.practiceSwingDetail;
}

/** The last repetition as a shape, a word and its cue. */
export function Verdict() {
  const last = useSection('last');
  const mark = last === null ? 'none' : entryOf(last);
  return (
    <section class={`verdict mark-${mark}`} aria-labelledby="verdict-label">
      <h2 id="verdict-label" class="label">
        {last === null ? t.verdict.title : `${t.verdict.title} · ${last.index}`}
      </h2>
      <div class="verdict-body" data-testid="verdict" data-mark={mark}>
        <Shape mark={mark} />
        <div class="verdict-words">
          <p class="verdict-word">{mark === 'none' ? t.verdict.none : t.verdict[mark]}</p>
          <p class={`cue${last?.kind === 'rehearsal' ? '' : ' cue-small'}`}>
            {last === null ? t.verdict.noneDetail : cueOf(last)}
          </p>
        </div>
      </div>
    </section>
  );
}
