import { doAsked } from './motions/asked.ts';
import { wait } from './scene.ts';
import type { ScriptToken } from './script.ts';
import type { Movement } from './simulation.ts';

/** How long a golfer stands before looking again whether something was asked, s. */
const STAND_S = 0.25;

const standAbout: Movement = (scene) => wait(scene, STAND_S);

/** What a golfer does who is asked step by step: the wishes in their order; between `practise` and `rest` the mix. */
export function* promptedTokens(
  wishes: string[],
  mix: Iterator<ScriptToken, void>,
): Generator<ScriptToken | Movement, void> {
  let practising = false;
  for (;;) {
    const wish = wishes.shift();
    if (wish !== undefined) {
      practising = wish === 'practise';
      yield (scene) => doAsked(scene, wish);
      continue;
    }
    const next = practising ? mix.next() : null;
    yield next === null || next.done === true ? standAbout : next.value;
  }
}
