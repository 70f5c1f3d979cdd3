import type { Ref } from 'preact';
import type { StudentRow } from '../../../streaming/hubContract/students.ts';
import { h } from '../../strings/hub.ts';
import { StudentLine } from './StudentLine.tsx';
import { GROUPS, type Group } from './order.ts';

const words = h.needs;

function GroupPart(props: {
  readonly group: Group;
  readonly students: readonly StudentRow[];
  readonly open: boolean;
  readonly fold: (open: boolean) => void;
}) {
  const { group, students, open } = props;
  if (students.length === 0) return null;
  const nowMs = Date.now();
  return (
    <details
      class="need-group"
      data-group={group}
      open={open}
      onToggle={(event) => props.fold(event.currentTarget.open)}
    >
      <summary>
        <h2>
          {words.groups[group]} <small>{students.length}</small>
        </h2>
      </summary>
      {open && (
        <ul class="student-lines" aria-label={words.groups[group]}>
          {students.map((s) => (
            <StudentLine key={s.id} s={s} nowMs={nowMs} />
          ))}
        </ul>
      )}
    </details>
  );
}

/** The students by what they need; small things and all well can be folded away. */
export function NeedGroups(props: {
  readonly groups: Readonly<Record<Group, readonly StudentRow[]>>;
  readonly open: readonly Group[];
  readonly fold: (group: Group, open: boolean) => void;
  readonly place: Ref<HTMLDivElement>;
}) {
  return (
    <div class="need-groups" ref={props.place}>
      {GROUPS.map((group) => (
        <GroupPart
          key={group}
          group={group}
          students={props.groups[group]}
          open={props.open.includes(group)}
          fold={(open) => props.fold(group, open)}
        />
      ))}
    </div>
  );
}
