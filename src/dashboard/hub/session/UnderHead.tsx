import { useState } from 'preact/hooks';
import { Dialog } from '../../shell/Dialog.tsx';
import { h } from '../../strings/hub.ts';
import { t } from '../../strings/strings.ts';
import { Form } from '../parts/Field.tsx';
import { useAct } from '../parts/useAct.ts';
import { goTo, to } from '../shell/router.ts';
import { ClosePain } from '../student/ClosePain.tsx';
import { writePeriods } from '../student/periods.ts';
import { FilmsOfSession } from './Films.tsx';
import type { SessionDesk } from './desk.ts';
import { Own } from '../../shell/Own.tsx';

const words = h.session;

/** Where two sessions stand beside each other: a period that holds the one, and one that holds the other. */
const compareAddress = (studentId: string, aMs: number, bMs: number): string =>
  `${to('students', studentId, 'compare')}?${writePeriods({
    aFromMs: aMs,
    aToMs: aMs + 1,
    bFromMs: bMs,
    bToMs: bMs + 1,
  })}`;

function Neighbours({ desk: { session, isCoach } }: { readonly desk: SessionDesk }) {
  const { older, newer, summary, studentId } = session;
  if (older === null && newer === null) return null;
  return (
    <p class="row">
      {older !== null && <a href={to('sessions', older.id)}>{words.older}</a>}
      {newer !== null && <a href={to('sessions', newer.id)}>{words.newer}</a>}
      {isCoach && older !== null && (
        <a href={compareAddress(studentId, older.startedMs, Date.parse(summary.startedAt))}>
          {words.compareOlder}
        </a>
      )}
    </p>
  );
}

function Differences({ lines }: { readonly lines: readonly string[] }) {
  if (lines.length === 0) return null;
  return (
    <section class="differences">
      <h2>{words.differences}</h2>
      <ul class="plain">
        {lines.map((line) => (
          <li key={line}>{t.said.difference(line)}</li>
        ))}
      </ul>
    </section>
  );
}

function Relabels({ desk: { session } }: { readonly desk: SessionDesk }) {
  if (session.relabels.length === 0) return null;
  return (
    <section>
      <h2>{words.relabels}</h2>
      <ul class="plain">
        {session.relabels.map(({ index, kind, originalKind, by, atMs }) => (
          <li key={index}>
            {words.relabelled(index, words.kinds[kind], words.originals[originalKind], by, atMs)}
          </li>
        ))}
      </ul>
    </section>
  );
}

/** Open pain that was found here, and the way to close it. */
function OpenPain({ desk: { session, again } }: { readonly desk: SessionDesk }) {
  if (session.openPain === null) return null;
  return (
    <p class="row standing">
      <span>
        <b>{h.needs.pain.open}:</b> <Own>{session.openPain}</Own>
      </span>
      <ClosePain
        studentId={session.studentId}
        name={session.student}
        sessionId={session.summary.id}
        again={again}
      />
    </p>
  );
}

/** Why there are no new numbers (without any, that stands in their place), and the way to try again. */
function NotAnalysed({
  desk: { session, isCoach, client, again },
}: {
  readonly desk: SessionDesk;
}) {
  const { busy, problem, run } = useAct();
  const { id, problem: why } = session.summary;
  if (why === null || session.analysing) return null;
  const start = (): void =>
    void run(async () => {
      await client.sessions.analyseAgain(id);
      again();
    });
  return (
    <p class="row standing">
      {session.analysis !== null && (
        <span>
          <b>{words.failed}:</b> {t.said.refusal(why)}
        </span>
      )}
      {problem !== null && <span role="alert">{problem}</span>}
      {isCoach && (
        <button type="button" disabled={busy} onClick={start}>
          {words.analyseAgain}
        </button>
      )}
    </p>
  );
}

/** Below the header of a session: how it may be read, what was set by hand. */
export function UnderHead({ desk }: { readonly desk: SessionDesk }) {
  const { session } = desk;
  return (
    <>
      <NotAnalysed desk={desk} />
      <OpenPain desk={desk} />
      <p class="fine">{words.underPlan(session.planNumber, session.plan.name)}</p>
      <Differences lines={session.differences} />
      <Relabels desk={desk} />
      <Neighbours desk={desk} />
    </>
  );
}

function RemoveSession({ desk }: { readonly desk: SessionDesk }) {
  const [asking, setAsking] = useState(false);
  const { busy, problem, run } = useAct();
  const { studentId, summary } = desk.session;
  const close = (): void => setAsking(false);
  const send = (): void =>
    void run(() => desk.client.sessions.dropSession(summary.id)).then(
      (done) => done && goTo(desk.isCoach ? to('students', studentId) : to('home')),
    );
  return (
    <section>
      <button type="button" class="danger" onClick={() => setAsking(true)}>
        {words.remove}
      </button>
      {asking && (
        <Dialog title={words.removeTitle} onClose={close}>
          <Form go={words.remove} send={send} busy={busy} problem={problem} cancel={close} small>
            <p>{words.removeWhy}</p>
          </Form>
        </Dialog>
      )}
    </section>
  );
}

/** At the end of a session's page. */
export function SessionEnd({ desk }: { readonly desk: SessionDesk }) {
  const { id } = desk.session.summary;
  return (
    <>
      <FilmsOfSession desk={desk} />
      <section>
        <h2>{words.exports}</h2>
        <ul class="exports">
          {words.formats.map(([format, name]) => (
            <li key={format}>
              <a href={desk.client.sessions.exportAddress(id, format)} download>
                {name}
              </a>
            </li>
          ))}
        </ul>
      </section>
      <RemoveSession desk={desk} />
    </>
  );
}
