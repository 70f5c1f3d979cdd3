import { useCallback, useRef, useState } from 'preact/hooks';
import type { StudentRow } from '../../../streaming/hubContract/students.ts';
import { useAnswer } from '../../review/useAnswer.ts';
import { h } from '../../strings/hub.ts';
import { Asked } from '../parts/Asked.tsx';
import { HubPage } from '../parts/HubPage.tsx';
import { useHub } from '../shell/hub.ts';
import { useKeys } from '../shell/keys.ts';
import { goTo, to } from '../shell/router.ts';
import { InviteDialog } from './InviteStudent.tsx';
import { NeedFilter } from './NeedFilter.tsx';
import { StudentLine } from './StudentLine.tsx';
import { firstNeed, narrowed, nextToReview, stepped } from './order.ts';
import { useNarrowing } from './useNarrowing.ts';

const words = h.needs;

const idOf = (element: Element | null): string | null =>
  element?.closest<HTMLElement>('[data-student]')?.dataset['student'] ?? null;

const focusOn = (list: HTMLElement | null, id: string | null): void => {
  if (id === null) return;
  list?.querySelector<HTMLElement>(`[data-student="${CSS.escape(id)}"] h2 a`)?.focus();
};

function List({ students }: { readonly students: readonly StudentRow[] }) {
  const [by, set] = useNarrowing();
  const list = useRef<HTMLUListElement>(null);
  const search = useRef<HTMLInputElement>(null);
  const nowMs = Date.now();
  const shown = narrowed(students, by);
  const step = (way: 1 | -1): void =>
    focusOn(
      list.current,
      stepped(
        shown.map(({ id }) => id),
        idOf(document.activeElement),
        way,
      ),
    );
  const next = nextToReview(shown);
  useKeys({
    j: () => step(1),
    ArrowDown: () => step(1),
    k: () => step(-1),
    ArrowUp: () => step(-1),
    '/': () => search.current?.focus(),
    n: () => next !== null && goTo(to('sessions', next)),
  });
  return (
    <>
      <NeedFilter
        students={students}
        by={by}
        set={set}
        search={search}
        leaveSearch={() => {
          // left at once: keys typed before the list is drawn anew are for the list
          search.current?.blur();
          requestAnimationFrame(() => list.current?.querySelector('a')?.focus());
        }}
      />
      {shown.length === 0 && (
        <div class="nobody">
          <p>{words.nothingFound}</p>
          <button type="button" onClick={() => set({ need: null, name: '' })}>
            {words.everyone}
          </button>
        </div>
      )}
      <ul class="student-lines" ref={list} aria-label={words.list}>
        {shown.map((s) => (
          <StudentLine key={s.id} s={s} nowMs={nowMs} />
        ))}
      </ul>
      <p class="fine keys-line">{words.keys}</p>
    </>
  );
}

function NoStudent({ invite }: { readonly invite: () => void }) {
  return (
    <section class="nobody">
      <h2>{words.empty.title}</h2>
      <p class="lead">{words.empty.text}</p>
      <button type="button" class="primary" onClick={invite}>
        {words.invite.open}
      </button>
      <p class="fine">{words.empty.mail}</p>
    </section>
  );
}

/** The coach's start page. */
export function NeedsPage() {
  const { client } = useHub();
  const answer = useAnswer(useCallback(() => client.students.students(), [client]));
  const [inviting, setInviting] = useState(false);
  const needing = (students: readonly StudentRow[]): number =>
    students.filter((s) => firstNeed(s) !== 'none').length;
  return (
    <HubPage title={words.title}>
      <Asked of={answer}>
        {({ students }) =>
          students.length === 0 ? (
            <NoStudent invite={() => setInviting(true)} />
          ) : (
            <>
              <div class="head-row">
                <p class="lead">{words.lead(needing(students), students.length)}</p>
                <button type="button" onClick={() => setInviting(true)}>
                  {words.invite.open}
                </button>
              </div>
              <List students={students} />
            </>
          )
        }
      </Asked>
      {inviting && (
        <InviteDialog
          role="student"
          title={words.invite.title}
          close={() => {
            setInviting(false);
            answer.again();
          }}
        />
      )}
    </HubPage>
  );
}
