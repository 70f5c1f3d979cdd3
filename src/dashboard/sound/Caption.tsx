import { t } from '../strings/strings.ts';

/** Everything that is spoken also stands here. */
export function Caption({ words }: { readonly words: string | null }) {
  return (
    <p class="caption" aria-live="polite" data-testid="caption">
      <span class="label">{t.sound.captions}</span>
      {words ?? <span class="caption-none">{t.sound.noCaption}</span>}
    </p>
  );
}
