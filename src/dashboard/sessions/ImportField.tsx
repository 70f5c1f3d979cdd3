import { useEffect, useState } from 'preact/hooks';
import { t } from '../strings/strings.ts';
import { importFiles } from './importing.ts';

const words = t.sessions;

const holdsFiles = (event: DragEvent): boolean =>
  event.dataTransfer?.types.includes('Files') ?? false;

/** Files dropped anywhere on the page; true while some hang over it. */
function useDrop(take: (files: readonly File[]) => void): boolean {
  const [over, setOver] = useState(false);
  useEffect(() => {
    const hang = (event: DragEvent): void => {
      if (!holdsFiles(event)) return;
      event.preventDefault();
      setOver(true);
    };
    const leave = (event: DragEvent): void => {
      if (event.relatedTarget === null) setOver(false);
    };
    const drop = (event: DragEvent): void => {
      if (!holdsFiles(event)) return;
      event.preventDefault();
      setOver(false);
      take([...(event.dataTransfer?.files ?? [])]);
    };
    addEventListener('dragover', hang);
    addEventListener('dragleave', leave);
    addEventListener('drop', drop);
    return () => {
      removeEventListener('dragover', hang);
      removeEventListener('dragleave', leave);
      removeEventListener('drop', drop);
    };
  }, [take]);
  return over;
}

/** Takes in session zips, chosen or dropped. */
export function ImportField({ done }: { readonly done: () => void }) {
  const [told, setTold] = useState<readonly string[]>([]);
  const [busy, setBusy] = useState(false);
  const [take] = useState(() => async (files: readonly File[]): Promise<void> => {
    if (files.length === 0) return;
    setBusy(true);
    const { imported, refused } = await importFiles(files);
    setBusy(false);
    setTold([...(imported > 0 ? [words.imported(imported)] : []), ...refused]);
    if (imported > 0) done();
  });
  const over = useDrop(take);
  return (
    <div class={over ? 'import over' : 'import'}>
      <label>
        <span>{words.import}</span>
        <input
          type="file"
          accept=".zip,application/zip"
          multiple
          disabled={busy}
          onChange={(event) => {
            const input = event.currentTarget;
            void take([...(input.files ?? [])]).then(() => (input.value = ''));
          }}
        />
      </label>
      <p class="fine">{over ? words.dropNow : words.drop}</p>
      <div role="status">
        {busy && <p>{words.importing}</p>}
        {!busy && told.map((sentence) => <p key={sentence}>{sentence}</p>)}
      </div>
    </div>
  );
}
