import { useCallback, useState } from 'preact/hooks';
import type { AuditEntry } from '../../../streaming/hubContract/people.ts';
import { useAnswer } from '../../review/useAnswer.ts';
import { TableHead } from '../../shell/TableHead.tsx';
import { h } from '../../strings/hub.ts';
import { Asked } from '../parts/Asked.tsx';
import { useAct } from '../parts/useAct.ts';
import { useHub } from '../shell/hub.ts';

const words = h.club.audit;

/** So many the hub gives at once. */
const PAGE = 100;

function Entries({ entries }: { readonly entries: readonly AuditEntry[] }) {
  return (
    <div class="table-scroll" tabIndex={0} role="region" aria-label={words.title}>
      <table>
        <TableHead columns={words.columns} />
        <tbody>
          {entries.map(({ id, atMs, who, act, what, address }) => (
            <tr key={id}>
              <td>{h.shell.moment(atMs)}</td>
              <td>{who ?? words.nobody}</td>
              <td>{words.acts[act] ?? act}</td>
              <td>{what}</td>
              <td>{address}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}

function Log({ first }: { readonly first: readonly AuditEntry[] }) {
  const { client } = useHub();
  const [entries, setEntries] = useState(first);
  const [over, setOver] = useState(first.length < PAGE);
  const { busy, problem, run } = useAct();
  const older = (): void =>
    void run(async () => {
      const more = await client.people.audit(entries.at(-1)?.id ?? null);
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
export function AuditPart() {
  const { client } = useHub();
  const answer = useAnswer(useCallback(() => client.people.audit(null), [client]));
  return (
    <section class="part">
      <h2>{words.title}</h2>
      <p class="fine">{words.why}</p>
      <Asked of={answer}>{(entries) => <Log first={entries} />}</Asked>
    </section>
  );
}
