import { Caution } from '../shell/Caution.tsx';
import { useRest } from '../shell/router.ts';
import { SessionDetail } from './SessionDetail.tsx';
import { SessionList } from './SessionList.tsx';

/** Kept sessions: the list, or the one that the address names. */
export function SessionsScreen() {
  const id = useRest();
  return (
    <main id="main" class="sessions" tabIndex={-1}>
      {id === '' ? <SessionList /> : <SessionDetail key={id} id={id} />}
      <Caution />
    </main>
  );
}
