import { useFeedPart, useSection } from '../feed/hooks.ts';
import { t } from '../strings/strings.ts';
import { stageWord } from './stateWord.ts';

const waiting = { word: t.state.nothing, detail: t.source.starting, mood: 'rest' } as const;

const stageKey = ({ word, detail, mood }: ReturnType<typeof stageWord>): string =>
  [word, detail, mood].join('\n');

/** The practice state in words to be read from 4 m. */
export function Stage() {
  const key = useFeedPart(({ view }) => stageKey(view === null ? waiting : stageWord(view)));
  const [word, detail, mood] = key.split('\n');
  return (
    <section class={`stage mood-${mood}`} aria-labelledby="stage-label">
      <h2 id="stage-label" class="label">
        {t.state.now}
      </h2>
      <p class="state-word" style={lengths(word ?? '')} data-testid="state-word">
        {word}
      </p>
      <p class="state-detail">{detail}</p>
      <HoldBand />
    </section>
  );
}

/** Letters in one line, and in the longer of two: the largest type that fits follows from them. */
function lengths(text: string): Record<string, number> {
  const words = text.split(' ');
  const halves = words.map((_, i) =>
    Math.max(words.slice(0, i).join(' ').length, words.slice(i).join(' ').length),
  );
  return { '--one': text.length, '--two': Math.min(text.length, ...halves) };
}

/** How much of the asked hold is done. */
function HoldBand() {
  const phase = useSection('phase');
  const target = useSection('plan')?.targets.holdS?.min ?? null;
  if (target === null || phase === null) return <div class="hold" />;
  const heldS = phase.phase === 'top' ? phase.holdS : 0;
  const share = Math.min(1, heldS / target);
  const text = t.hold.value(heldS.toFixed(1), target.toFixed(1));
  return (
    <div class="hold">
      <div
        class={`hold-track${share >= 1 ? ' full' : ''}`}
        role="meter"
        aria-label={t.hold.label}
        aria-valuemin={0}
        aria-valuemax={target}
        aria-valuenow={Math.min(target, Number(heldS.toFixed(1)))}
        aria-valuetext={text}
      >
        <div class="hold-fill" style={{ transform: `scaleX(${share})` }} />
      </div>
      <span class="hold-text">{text}</span>
    </div>
  );
}
