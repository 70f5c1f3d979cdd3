import type { RefObject } from 'preact';
import type { NeedCode } from '../../../coaching/attention.ts';
import type { StudentRow } from '../../../streaming/hubContract/students.ts';
import { h } from '../../strings/hub.ts';
import { NeedShape } from './NeedShape.tsx';
import { type Narrowing, needCounts } from './order.ts';

const words = h.needs;

function Choice(props: {
  readonly code: NeedCode | null;
  readonly n: number;
  readonly chosen: boolean;
  readonly choose: () => void;
}) {
  const { code } = props;
  return (
    <button type="button" aria-pressed={props.chosen} onClick={props.choose}>
      {code !== null && <NeedShape code={code} />}
      {code === null ? words.all : words.names[code]} <small>{props.n}</small>
    </button>
  );
}

/** By need and by name. */
export function NeedFilter(props: {
  readonly students: readonly StudentRow[];
  readonly by: Narrowing;
  readonly set: (by: Narrowing) => void;
  readonly search: RefObject<HTMLInputElement | null>;
  readonly leaveSearch: () => void;
}) {
  const { students, by, set } = props;
  const leave = (event: KeyboardEvent): void => {
    if (event.key !== 'Enter' && event.key !== 'Escape') return;
    event.preventDefault();
    if (event.key === 'Escape') set({ ...by, name: '' });
    props.leaveSearch();
  };
  return (
    <div class="need-filter">
      <div class="need-choices" role="group" aria-label={words.filter}>
        <Choice
          code={null}
          n={students.length}
          chosen={by.need === null}
          choose={() => set({ ...by, need: null })}
        />
        {[...needCounts(students)].map(([code, n]) => (
          <Choice
            key={code}
            code={code}
            n={n}
            chosen={by.need === code}
            choose={() => set({ ...by, need: by.need === code ? null : code })}
          />
        ))}
      </div>
      <label class="search">
        <span class="hidden">{words.search}</span>
        <input
          ref={props.search}
          type="search"
          dir="auto"
          placeholder={words.search}
          value={by.name}
          maxLength={80}
          onInput={(event) => set({ ...by, name: event.currentTarget.value })}
          onKeyDown={leave}
        />
        <kbd aria-hidden="true">/</kbd>
      </label>
    </div>
  );
}
