import { t } from '../strings/strings.ts';

/** Says that a draft was found, and how to be rid of it. */
export function DraftNote(props: {
  readonly restoredMs: number | null;
  readonly discard: () => void;
}) {
  if (props.restoredMs === null) return null;
  return (
    <p class="draft-note" role="status">
      {t.drafts.restored(props.restoredMs, Date.now())}{' '}
      <button type="button" class="quiet" onClick={props.discard}>
        {t.drafts.discard}
      </button>
    </p>
  );
}
