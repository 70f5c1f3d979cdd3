import type { ProgressSession } from '../../../streaming/hubContract/students.ts';
import { TableHead } from '../../shell/TableHead.tsx';
import { h } from '../../strings/hub.ts';
import { monthRows } from './months.ts';

const words = h.report;

/** Practice month by month, rehearsals and balls apart. */
export function MonthTable({ sessions }: { readonly sessions: readonly ProgressSession[] }) {
  return (
    <div class="table-scroll" tabIndex={0} role="region" aria-label={words.practice}>
      <table>
        <TableHead columns={words.columns} />
        <tbody>
          {monthRows(sessions).map((m) => (
            <tr key={m.atMs}>
              <th scope="row">{words.month(m.atMs)}</th>
              <td>{m.days}</td>
              <td>{m.sessions}</td>
              <td>{m.rehearsals}</td>
              <td>{words.share(m.passed, m.scored)}</td>
              <td>{m.balls}</td>
              <td>{words.share(m.ballsInMix, m.balls)}</td>
              <td>{m.warnings}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}
