import { useCallback, useState } from 'preact/hooks';
import type { LogCheck, LogEntry } from '../../../streaming/hubContract/log.ts';
import { useAnswer } from '../../review/useAnswer.ts';
import { Own } from '../../shell/Own.tsx';
import { TableHead } from '../../shell/TableHead.tsx';
import { h } from '../../strings/hub.ts';
import { Asked } from '../parts/Asked.tsx';
import { useAct } from '../parts/useAct.ts';
import { useHub } from '../shell/hub.ts';
import { aboutText, personText } from './logTexts.ts';

const words = h.club.log;

/** So many the hub gives at once. */
const PAGE = 100;

function Entries({ entries }: { readonly entries: readonly LogEntry[] }) {
  return (
    <div class="table-scroll" tabIndex={0} role="region" aria-label={words.title}>
      <table>
        <TableHead columns={words.columns} />
        <tbody>
          {entries.map(({ id, atMs, by, act, about, address }) => (
            <tr key={id}>
              <td>{h.shell.moment(atMs)}</td>
              <td>
                <Own>{by === null ? words.nobody : personText(by)}</Own>
              </td>
              <td>{words.acts[act]}</td>
              <td>
                <Own>{aboutText(about)}</Own>
              </td>
              <td>{address}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}

/** Whether each entry is still as it was written. */
function Whole() {
  const { client } = useHub();
  const [check, setCheck] = useState<LogCheck | null>(null);
  const { busy, problem, run } = useAct();
  return (
    <p class="row">
      <button
        type="button"
        disabled={busy}
        onClick={() => void run(async () => setCheck(await client.people.checkLog()))}
      >
        {words.check}
      </button>
      <span role="status">
        {problem ?? (check === null ? '' : words.checked(check.entries, check.brokenAt))}
      </span>
    </p>
  );
}

function Log({ first }: { readonly first: readonly LogEntry[] }) {
  const { client } = useHub();
  const [entries, setEntries] = useState(first);
  const [over, setOver] = useState(first.length < PAGE);
  const { busy, problem, run } = useAct();
  const older = (): void =>
    void run(async () => {
      const more = await client.people.log(entries.at(-1)?.id ?? null);
      setEntries([...entries, ...more]);
      setOver(more.length < PAGE);
    });
  return (
    <>
      <Entries entries={entries} />
      {problem !== null && <p role="alert">{problem}</p>}
      {!over && (
        <p>
          <button type="button" disabled={busy} onClick={older}>
            {words.older}
          </button>
        </p>
      )}
    </>
  );
}

/** Who did what to people's data. */
export function LogPart() {
  const { client } = useHub();
  const answer = useAnswer(useCallback(() => client.people.log(null), [client]));
  return (
    <section class="part">
      <h2>{words.title}</h2>
      <p class="fine">{words.why}</p>
      <Whole />
      <Asked of={answer}>{(entries) => <Log first={entries} />}</Asked>
    </section>
  );
}
