import { shownNumber } from '../../coaching/shown.ts';
import { useFeedPart, useSection } from '../feed/hooks.ts';
import { useSilence } from '../feed/useSilence.ts';
import { t } from '../strings/strings.ts';
import { type StageWord, heldText, stageWord } from './stateWord.ts';
import type { PracticeView } from '../../streaming/contract.ts';
import { FittedWord } from './FittedWord.tsx';

const waiting = { word: t.state.nothing, detail: t.source.starting, mood: 'rest' } as const;

const stageKey = ({ word, detail, mood }: ReturnType<typeof stageWord>): string =>
  [word, detail, mood].join('\n');

/** The practice state in words to be read from 4 m; without a connection the last one, pale, with its age. `says`: other words for a screen that only shows. */
export function Stage({ says = stageWord }: { readonly says?: (view: PracticeView) => StageWord }) {
  const key = useFeedPart(({ view }) => stageKey(view === null ? waiting : says(view)));
  const [word = '', detail, mood] = key.split('\n');
  const silentS = useSilence();
  const isOld = useFeedPart(({ connection }) => connection === 'lost');
  return (
    <section class={isOld ? 'stage stale' : `stage mood-${mood}`} aria-labelledby="stage-label">
      <h2 id="stage-label" class="label">
        {isOld ? t.connection.last : t.state.now}
      </h2>
      <FittedWord word={word} testId="state-word" />
      {/* only for the eye: a voice would tell every second anew */}
      <p class="state-detail" aria-hidden={isOld}>
        {isOld ? t.connection.age(silentS ?? 0) : detail}
      </p>
      {isOld ? <div class="hold" /> : <HoldBand />}
    </section>
  );
}

/** No hold is asked of a calibration, nor of the address before a ball. */
const asksNoHold = ({ phase, ledger }: PracticeView): boolean =>
  phase.phase === 'calibrating' || (phase.phase === 'address' && ledger.next === 'ball');

/** How much of the asked hold is done. */
function HoldBand() {
  const phase = useSection('phase');
  const target = useSection('plan')?.targets.holdS?.min ?? null;
  const isIdle = useFeedPart(({ view }) => view === null || asksNoHold(view));
  if (target === null || phase === null || isIdle) return <div class="hold" />;
  const heldS = phase.phase === 'top' ? phase.holdS : 0;
  const share = Math.min(1, heldS / target);
  const text = t.hold.value(heldText(heldS, target), t.written(String(target)));
  return (
    <div class="hold">
      <div
        class={`hold-track${share >= 1 ? ' full' : ''}`}
        role="meter"
        aria-label={t.hold.label}
        aria-valuemin={0}
        aria-valuemax={target}
        aria-valuenow={Math.min(target, Number(shownNumber(heldS, 1, [{ min: target }])))}
        aria-valuetext={text}
      >
        <div class="hold-fill" style={{ transform: `scaleX(${share})` }} />
      </div>
      <span class="hold-text">{text}</span>
    </div>
  );
}
