import { useMemo, useState } from 'preact/hooks';
import { DraftNote } from '../../drafts/DraftNote.tsx';
import { h } from '../../strings/hub.ts';
import { Asked } from '../parts/Asked.tsx';
import { TextField } from '../parts/Field.tsx';
import { HubPage } from '../parts/HubPage.tsx';
import { useHubDraft } from '../parts/useHubDraft.ts';
import { to } from '../shell/router.ts';
import { Sheet } from './Sheet.tsx';
import { rangeStart } from './months.ts';
import { type ReportData, type Said, useReport } from './useReport.ts';
import { Own } from '../../shell/Own.tsx';

const words = h.report;

function CommentChoice(props: {
  readonly said: readonly Said[];
  readonly left: ReadonlySet<string>;
  readonly toggle: (id: string) => void;
}) {
  if (props.said.length === 0) return <p class="fine">{words.noComments}</p>;
  return (
    <fieldset class="comment-choice">
      <legend>{words.comments}</legend>
      {props.said.map(({ comment }) => (
        <label key={comment.id}>
          <input
            type="checkbox"
            checked={!props.left.has(comment.id)}
            onChange={() => props.toggle(comment.id)}
          />
          {h.shell.day(comment.atMs)}, <Own>{comment.by}</Own>:{' '}
          <Own>{comment.text.slice(0, 80)}</Own>
        </label>
      ))}
    </fieldset>
  );
}

function RangeChoice(props: { readonly months: number; readonly set: (months: number) => void }) {
  return (
    <label>
      {words.range}{' '}
      <select
        value={props.months}
        onChange={(event) => props.set(Number(event.currentTarget.value))}
      >
        {words.ranges.map(([months, name]) => (
          <option key={months} value={months}>
            {name}
          </option>
        ))}
      </select>
    </label>
  );
}

const toggled = (set: ReadonlySet<string>, id: string): ReadonlySet<string> => {
  const next = new Set(set);
  if (!next.delete(id)) next.add(id);
  return next;
};

function Found(props: {
  readonly data: ReportData;
  readonly months: number;
  readonly setMonths: (months: number) => void;
  readonly fromMs: number;
}) {
  const { data, months, setMonths, fromMs } = props;
  const draft = useHubDraft(`report for ${data.student.id}`);
  const own = draft.value;
  const [left, setLeft] = useState<ReadonlySet<string>>(new Set());
  const said = data.said.filter(({ comment }) => !left.has(comment.id));
  return (
    <>
      <section class="report-settings" aria-label={words.settings}>
        <h2>{words.settings}</h2>
        <RangeChoice months={months} set={setMonths} />
        <TextField label={words.words} value={own} set={draft.set} rows={3} optional />
        <DraftNote restoredMs={draft.restoredMs} discard={() => draft.drop()} />
        <CommentChoice
          said={data.said}
          left={left}
          toggle={(id) => setLeft((old) => toggled(old, id))}
        />
        <p class="row">
          <button type="button" class="primary" onClick={() => print()}>
            {words.print}
          </button>
          <span class="fine">{words.paper}</span>
        </p>
      </section>
      <Sheet data={data} own={own.trim()} said={said} fromMs={fromMs} nowMs={Date.now()} />
    </>
  );
}

/** What a coach would hand to a student, on paper. */
export function ReportPage({ id }: { readonly id: string }) {
  const [months, setMonths] = useState(3);
  const fromMs = useMemo(() => rangeStart(months, Date.now()), [months]);
  const answer = useReport(id, fromMs);
  const name = answer.data?.student.name ?? h.needs.list;
  return (
    <HubPage title={words.title(name)} above={<a href={to('students', id)}>{words.back}</a>}>
      <Asked of={answer}>
        {(data) => <Found data={data} months={months} setMonths={setMonths} fromMs={fromMs} />}
      </Asked>
    </HubPage>
  );
}
