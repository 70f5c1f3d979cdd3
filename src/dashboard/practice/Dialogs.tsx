import { useEffect, useState } from 'preact/hooks';
import type { CorrectedKind } from '../../coaching/ledger.ts';
import { useSection } from '../feed/hooks.ts';
import { Refusal, useAsk } from '../shell/Ask.tsx';
import { Dialog } from '../shell/Dialog.tsx';
import { NO_PAIN, type Pain, PainFields } from '../shell/PainFields.tsx';
import { t } from '../strings/strings.ts';
import { showDialog, useDialog } from './dialogs.ts';
import { Shape } from './shapes.tsx';

const close = (): void => showDialog(null);

function PainDialog() {
  const [pain, setPain] = useState(NO_PAIN);
  const [missing, setMissing] = useState<string | null>(null);
  const { ask, refusal } = useAsk();
  useEffect(() => void ask({ type: 'pause' }), []);
  const rate = (next: Pain): void => {
    setPain(next);
    setMissing(null);
  };
  const send = async (): Promise<void> => {
    setMissing(pain.rating === null ? t.ready.pain.choose : null);
    if (pain.rating === null) return;
    if (await ask({ type: 'pain', rating: pain.rating, signs: pain.signs })) close();
  };
  const goOn = async (): Promise<void> => {
    if (await ask({ type: 'resume' })) close();
  };
  return (
    <Dialog title={t.pain.title} onClose={close}>
      <p class="fine">{t.pain.paused}</p>
      <PainFields title={t.ready.pain.now} pain={pain} set={rate} />
      <Refusal text={missing ?? refusal} />
      <div class="row">
        <button type="button" class="primary" onClick={() => void send()}>
          {t.pain.send}
        </button>
        <button type="button" onClick={() => void goOn()}>
          {t.pain.cancel}
        </button>
      </div>
    </Dialog>
  );
}

function EndDialog() {
  const { ask, refusal } = useAsk();
  const end = async (): Promise<void> => {
    if (await ask({ type: 'finish' })) close();
  };
  return (
    <Dialog title={t.end.title} onClose={close}>
      <p>{t.end.text}</p>
      <Refusal text={refusal} />
      <div class="row">
        <button type="button" class="primary" onClick={() => void end()}>
          {t.end.yes}
        </button>
        <button type="button" onClick={close}>
          {t.end.no}
        </button>
      </div>
    </Dialog>
  );
}

const KINDS: readonly CorrectedKind[] = ['rehearsal', 'ball', 'practiceSwing', 'ignored'];
const MARKS = {
  rehearsal: 'notScored',
  ball: 'ball',
  practiceSwing: 'practiceSwing',
  ignored: 'ignored',
} as const;

function CorrectDialog({ index }: { readonly index: number }) {
  const entry = useSection('strip')?.find((e) => e.index === index);
  const canUndo = useSection('ledger')?.canUndo ?? false;
  const { ask, refusal } = useAsk();
  const correct = async (kind: CorrectedKind): Promise<void> => {
    if (await ask({ type: 'correct', index, kind })) close();
  };
  const undo = async (): Promise<void> => {
    if (await ask({ type: 'undo' })) close();
  };
  return (
    <Dialog title={t.correct.title(index)} onClose={close}>
      {entry !== undefined && <p>{t.correct.measured(t.correct.kinds[entry.kind])}</p>}
      <div class="kind-row">
        {KINDS.map((kind) => (
          <button
            type="button"
            key={kind}
            class={entry?.kind === kind ? 'kind chosen' : 'kind'}
            onClick={() => void correct(kind)}
          >
            <Shape mark={MARKS[kind]} />
            {t.correct.kinds[kind]}
          </button>
        ))}
      </div>
      <Refusal text={refusal} />
      <div class="row">
        {canUndo && (
          <button type="button" onClick={() => void undo()}>
            {t.correct.undo}
          </button>
        )}
        <button type="button" onClick={close}>
          {t.correct.close}
        </button>
      </div>
    </Dialog>
  );
}

/** The questions of the practice screen. */
export function Dialogs() {
  const dialog = useDialog();
  if (dialog === null) return null;
  if (dialog.kind === 'pain') return <PainDialog />;
  if (dialog.kind === 'end') return <EndDialog />;
  return <CorrectDialog key={dialog.index} index={dialog.index} />;
}
