import type { GuideView, PracticeView } from '../../streaming/contract.ts';
import { type StageWord, stageWord } from '../practice/stateWord.ts';
import { sided } from '../strings/sided.ts';
import { t } from '../strings/strings.ts';

const words = t.secondScreen.watch;

const helpOf = ({ status }: GuideView): string | null =>
  status === 'slow' || status === 'swapped' ? t.ready.guide[status] : null;

function guided({ guide, hand }: PracticeView): StageWord | null {
  if (guide === null) return null;
  const s = t.ready.guide;
  const seen = guide.wanted > 0 ? ` ${s.count(guide.count, guide.wanted)}` : '';
  const detail = helpOf(guide) ?? `${sided(s.detail[guide.step], hand)}${seen}`;
  return { word: sided(s.word[guide.step], hand), detail, mood: 'calm' };
}

function practising(view: PracticeView): StageWord {
  const said = stageWord(view);
  const { phase } = view.phase;
  const refused = phase === 'calibrating' && view.calibration.quality?.accepted === false;
  if (refused) return { ...said, detail: words.refused };
  return phase === 'paused' ? { ...said, detail: words.paused } : said;
}

/** What the stage says on a screen that has no buttons. */
export function watchWord(view: PracticeView): StageWord {
  const { stage } = view;
  if (stage === 'idle') return { word: t.state.nothing, detail: words.idle, mood: 'rest' };
  if (stage === 'practice') return practising(view);
  if (stage === 'stopped') return { word: words.stop, detail: words.stopped, mood: 'rest' };
  if (stage === 'after' || stage === 'over')
    return { word: t.state.ended, detail: words.afterwards, mood: 'rest' };
  const step = t.ready.steps[stage];
  return guided(view) ?? { word: words.getReady, detail: words.atLaptop(step), mood: 'calm' };
}
