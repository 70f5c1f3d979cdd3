import { useCallback, useEffect, useLayoutEffect, useRef, useState } from 'preact/hooks';
import type { StudentList, StudentRow } from '../../../streaming/hubContract/students.ts';
import { h } from '../../strings/hub.ts';
import { Asked } from '../parts/Asked.tsx';
import { HubPage } from '../parts/HubPage.tsx';
import { News } from '../parts/News.tsx';
import { useLive, useNews, useSettled } from '../parts/useLive.ts';
import { useHub } from '../shell/hub.ts';
import { useKeys } from '../shell/keys.ts';
import { goTo, to } from '../shell/router.ts';
import { InviteDialog } from './InviteStudent.tsx';
import { CalmPart } from './CalmPart.tsx';
import { NeedFilter } from './NeedFilter.tsx';
import { NeedGroups } from './NeedGroups.tsx';
import {
  GROUPS,
  type Group,
  grouped,
  narrowed,
  nextToReview,
  openAtFirst,
  stepped,
} from './order.ts';
import { useNarrowing } from './useNarrowing.ts';

const words = h.needs;

const idOf = (element: Element | null): string | null =>
  element?.closest<HTMLElement>('[data-student]')?.dataset['student'] ?? null;

const focusOn = (list: HTMLElement | null, id: string | null): void => {
  if (id === null) return;
  list?.querySelector<HTMLElement>(`[data-student="${CSS.escape(id)}"] h3 a`)?.focus();
};

/** The student whose line has the focus keeps it when the lines come in another order. */
function useKeptFocus(list: { readonly current: HTMLElement | null }, students: unknown): void {
  const focused = useRef<string | null>(null);
  const own = list.current?.contains(document.activeElement) === true;
  focused.current = own ? idOf(document.activeElement) : null;
  useLayoutEffect(() => {
    if (focused.current !== null && idOf(document.activeElement) === null)
      focusOn(list.current, focused.current);
  }, [students]);
}

/** Which groups are open: as it is at first, until somebody folds one. */
function useFolds(atFirst: readonly Group[]) {
  const [folded, setFolded] = useState<Partial<Record<Group, boolean>>>({});
  const open = GROUPS.filter((group) => folded[group] ?? atFirst.includes(group));
  const fold = (group: Group, isOpen: boolean): void => {
    if (open.includes(group) !== isOpen) setFolded({ ...folded, [group]: isOpen });
  };
  return { open, fold };
}

/** Opens what the line with the focus has to do. */
const openAct = (): void =>
  document.activeElement
    ?.closest('[data-student]')
    ?.querySelector<HTMLElement>('.line-act')
    ?.click();

function List({ students }: { readonly students: readonly StudentRow[] }) {
  const [by, set] = useNarrowing();
  const list = useRef<HTMLDivElement>(null);
  const search = useRef<HTMLInputElement>(null);
  useKeptFocus(list, students);
  const shown = narrowed(students, by);
  const groups = grouped(shown);
  const isNarrowed = by.need !== null || by.name !== '';
  const { open, fold } = useFolds(openAtFirst(groups, isNarrowed));
  const step = (way: 1 | -1): void => {
    const ids = open.flatMap((group) => groups[group].map(({ id }) => id));
    focusOn(list.current, stepped(ids, idOf(document.activeElement), way));
  };
  const next = nextToReview(shown);
  useKeys({
    j: () => step(1),
    ArrowDown: () => step(1),
    k: () => step(-1),
    ArrowUp: () => step(-1),
    '/': () => search.current?.focus(),
    n: () => next !== null && goTo(to('sessions', next)),
    o: openAct,
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
          requestAnimationFrame(() => list.current?.querySelector<HTMLElement>('h3 a')?.focus());
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
      <NeedGroups groups={groups} open={open} fold={fold} place={list} />
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

/** Names of those whose reasons are others than before. */
function newsOf(before: StudentList, now: StudentList): string {
  const reasons = (s: StudentRow | undefined): string => JSON.stringify(s?.needs);
  const there = new Map(before.students.map((s) => [s.id, s]));
  const changed = now.students.filter((s) => reasons(s) !== reasons(there.get(s.id)));
  return changed.length === 0 ? '' : h.news.students(changed.map(({ name }) => name));
}

function Students(props: {
  readonly latest: StudentList;
  readonly again: () => void;
  readonly invite: () => void;
}) {
  const { shown, waiting, show } = useSettled(props.latest);
  const { students } = shown;
  const news = useNews(shown, newsOf);
  // What the coach did on this page is shown at once.
  const own = useRef(false);
  useEffect(() => {
    if (own.current) show();
    own.current = false;
  }, [props.latest]);
  const changed = (): void => {
    own.current = true;
    props.again();
  };
  if (students.length === 0) return <NoStudent invite={props.invite} />;
  return (
    <>
      <div class="head-row needs-head">
        <h1>{words.title}</h1>
        <p>{words.lead(grouped(students).coach.length, students.length)}</p>
        <span class="needs-acts">
          <CalmPart students={students} changed={changed} />
          <button type="button" onClick={props.invite}>
            {words.invite.open}
          </button>
        </span>
      </div>
      <div class="head-row news-row">
        <News text={waiting ? h.news.waiting : news} />
        {waiting && (
          <button type="button" class="quiet" onClick={show}>
            {h.news.show}
          </button>
        )}
      </div>
      <List students={students} />
    </>
  );
}

/** The coach's start page. */
export function NeedsPage() {
  const { client } = useHub();
  const answer = useLive(useCallback(() => client.students.students(), [client]));
  const [inviting, setInviting] = useState(false);
  return (
    <HubPage title={words.title} bare={(answer.data?.students.length ?? 0) > 0}>
      <Asked of={answer}>
        {(latest) => (
          <Students latest={latest} again={answer.again} invite={() => setInviting(true)} />
        )}
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
