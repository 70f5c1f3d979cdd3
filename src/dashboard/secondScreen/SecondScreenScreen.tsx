import type { SecondScreenView } from '../../streaming/secondScreenContract.ts';
import { Refusal } from '../shell/Ask.tsx';
import { Caution } from '../shell/Caution.tsx';
import { t } from '../strings/strings.ts';
import { SwitchOn } from './SwitchOn.tsx';
import { SwitchedOn } from './SwitchedOn.tsx';
import { type SecondScreenState, useSecondScreen } from './useSecondScreen.ts';

const words = t.secondScreen;

function Standing({
  view,
  act,
}: Pick<SecondScreenState, 'act'> & { readonly view: SecondScreenView }) {
  return (
    <>
      {view.on === null && <p>{words.off}</p>}
      {view.on === null ? (
        <SwitchOn addresses={view.addresses} act={act} />
      ) : (
        <SwitchedOn on={view.on} act={act} />
      )}
      <p class="honest">{words.honest}</p>
    </>
  );
}

/** The second screen: switched on and off, its way in, and the screens that were let in. */
export function SecondScreenScreen() {
  const { view, problem, act } = useSecondScreen();
  return (
    <main id="main" class="sessions second-screen" tabIndex={-1}>
      <h1>{words.title}</h1>
      <p class="lead">{words.lead}</p>
      <Refusal text={problem} />
      {view === null && <p>{words.loading}</p>}
      {view === 'none' && <p>{words.none}</p>}
      {view !== null && view !== 'none' && <Standing view={view} act={act} />}
      <Caution />
    </main>
  );
}
