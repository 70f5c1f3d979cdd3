import { fitVars } from '../practice/fit.ts';
import { t } from '../strings/strings.ts';

const words = t.secondScreen.watch;

/** Without a connection nothing of the practice is shown: it would look as though it were now. */
export function Lost({ forS }: { readonly forS: number }) {
  return (
    <section class="stage lost" role="alert" data-testid="lost">
      <p class="state-word" style={fitVars(words.lost)}>
        {words.lost}
      </p>
      <p class="state-detail">{words.lostDetail(forS)}</p>
    </section>
  );
}
