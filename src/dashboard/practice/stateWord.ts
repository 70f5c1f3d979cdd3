import { shownNumber } from '../../coaching/shown.ts';
import { CALIBRATION_ORDER, type PracticeView, stepsDone } from '../../streaming/contract.ts';
import { sided } from '../strings/sided.ts';
import { t } from '../strings/strings.ts';

/** What the stage says: the word to read from 4 m, a line under it, and how the stage is coloured. */
export interface StageWord {
  readonly word: string;
  readonly detail: string;
  readonly mood: 'calm' | 'hold' | 'go' | 'caught' | 'rest';
}

/** The hold so far, s: it never reads as the asked one before it is. */
export const heldText = (heldS: number, targetS: number | null): string =>
  t.written(shownNumber(heldS, 1, targetS === null ? [] : [{ min: targetS }]));

function calibrating(view: PracticeView): StageWord {
  const { quality, steps } = view.calibration;
  if (quality !== null && !quality.accepted) {
    return { word: t.state.calibrating, detail: t.detail.refused, mood: 'rest' };
  }
  const done = stepsDone({ steps });
  const next = CALIBRATION_ORDER[done];
  if (next === undefined) {
    return { word: t.state.calibrating, detail: t.detail.calibrating, mood: 'calm' };
  }
  const place = t.detail.step(done + 1, CALIBRATION_ORDER.length);
  return {
    word: t.step[next] ?? '',
    detail: sided(`${place}. ${t.stepDetail[next] ?? ''}`, view.hand),
    mood: 'calm',
  };
}

function atTheTop({ phase, plan }: PracticeView): StageWord {
  const target = plan.targets.holdS?.min ?? null;
  if (target !== null && phase.holdS >= target) {
    return { word: t.state.letGo, detail: t.detail.letGo, mood: 'go' };
  }
  const detail =
    target === null ? t.hold.noTarget : t.detail.hold(`${t.written(String(target))} ${t.unit.s}`);
  return { word: t.state.hold(heldText(phase.holdS, target)), detail, mood: 'hold' };
}

/** The practice state in words. */
export function stageWord(view: PracticeView): StageWord {
  if (view.source.state === 'ended') {
    return { word: t.state.ended, detail: t.detail.ended, mood: 'rest' };
  }
  const { phase } = view.phase;
  if (phase === 'calibrating') return calibrating(view);
  if (phase === 'top') return atTheTop(view);
  if (phase === 'address' && view.ledger.next === 'ball') {
    return { word: t.state.ball, detail: t.detail.ball, mood: 'calm' };
  }
  const mood = { released: 'go', caught: 'caught', paused: 'rest' } as const;
  return {
    word: t.state[phase],
    detail: t.detail[phase],
    mood: phase in mood ? mood[phase as keyof typeof mood] : 'calm',
  };
}
