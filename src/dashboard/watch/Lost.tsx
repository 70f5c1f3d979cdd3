import { FittedWord } from '../practice/FittedWord.tsx';
import { t } from '../strings/strings.ts';

const words = t.secondScreen.watch;

/** Without a connection nothing of the practice is shown: it would look as though it were now. */
export function Lost({ forS }: { readonly forS: number }) {
  return (
    <section class="stage lost" role="alert" data-testid="lost">
      <FittedWord word={words.lost} />
      <p class="state-detail">{words.lostDetail(forS)}</p>
    </section>
  );
}
