import { EXPORTS } from '../../streaming/sessionsContract.ts';
import { SessionReview } from '../review/SessionReview.tsx';
import { useHashView } from '../review/useHashView.ts';
import { OwnName } from '../shell/OwnName.tsx';
import { t } from '../strings/strings.ts';
import { NotesForm } from './NotesForm.tsx';
import { ownSessions, sessionPath } from './api.ts';

const words = t.sessions;

function Exports({ id }: { readonly id: string }) {
  return (
    <section>
      <h2>{words.exports}</h2>
      <ul class="exports">
        {EXPORTS.map((format) => (
          <li key={format}>
            <a href={`/api/${sessionPath(id)}/export/${format}`} download>
              {words.formats[format]}
            </a>
          </li>
        ))}
        <li>
          <button type="button" class="quiet" onClick={() => print()}>
            {words.print}
          </button>
        </li>
      </ul>
    </section>
  );
}

/** One kept session. */
export function SessionDetail({ id }: { readonly id: string }) {
  const [view, setView] = useHashView();
  return (
    <>
      <p class="up">
        <a href="#/sessions">{words.back}</a>
      </p>
      <p class="print-only">
        <OwnName />
      </p>
      <SessionReview
        source={ownSessions}
        id={id}
        view={view}
        setView={setView}
        end={({ notes }) => (
          <>
            <NotesForm id={id} notes={notes} />
            <Exports id={id} />
          </>
        )}
      />
    </>
  );
}
