import { detectedKind } from '../../../coaching/asSaid.ts';
import { useRef, useState } from 'preact/hooks';
import type { JudgedRepetition } from '../../../coaching/judgement.ts';
import type { LabelKind } from '../../../streaming/hubContract/review.ts';
import { h } from '../../strings/hub.ts';
import { useAct } from '../parts/useAct.ts';
import type { SessionDesk } from './desk.ts';

const words = h.session;
const KINDS: readonly LabelKind[] = ['rehearsal', 'ball', 'ignore'];

/** Sends one choice at a time, the last one at last: arrow keys walk over others. The field keeps the focus meanwhile. */
function useChoice(send: (value: string) => Promise<void>) {
  const [chosen, setChosen] = useState<string | null>(null);
  const waiting: { current: string | null } = useRef(null);
  const { busy, problem, run } = useAct();
  const choose = async (value: string): Promise<void> => {
    waiting.current = value;
    setChosen(value);
    if (busy) return;
    while (waiting.current !== null) {
      const next = waiting.current;
      waiting.current = null;
      await run(() => send(next));
    }
    setChosen(null);
  };
  return { chosen, problem, choose };
}

/** Says what a repetition was; the kind that was found stays visible. */
export function Relabel({ r, desk }: { readonly r: JudgedRepetition; readonly desk: SessionDesk }) {
  const set = desk.session.relabels.find(({ index }) => index === r.index);
  const found = detectedKind(r);
  const { chosen, problem, choose } = useChoice((value) =>
    desk.relabel(r.index, value === '' ? null : (value as LabelKind)),
  );
  return (
    <section class="relabel">
      <label>
        <span class="label">{words.relabel.title}</span> <kbd aria-hidden="true">L</kbd>
        <select
          value={chosen ?? set?.kind ?? ''}
          onChange={(event) => void choose(event.currentTarget.value)}
        >
          <option value="">{words.relabel.asFound(words.originals[found])}</option>
          {KINDS.filter((kind) => kind !== found).map((kind) => (
            <option key={kind} value={kind}>
              {words.kinds[kind]}
            </option>
          ))}
        </select>
      </label>
      <p class="fine">
        {set !== undefined && `${words.relabel.by(set.by, set.atMs)} `}
        {words.relabel.why}
      </p>
      {problem !== null && <p role="alert">{problem}</p>}
    </section>
  );
}
