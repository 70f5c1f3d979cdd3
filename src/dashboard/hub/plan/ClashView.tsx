import { useState } from 'preact/hooks';
import type { Plan } from '../../../coaching/plan.ts';
import {
  type ChangedField,
  type PlanField,
  changedFields,
  mergePlans,
} from '../../../coaching/planFields.ts';
import type { PlanVersion } from '../../../streaming/hubContract/students.ts';
import { h } from '../../strings/hub.ts';
import { t } from '../../strings/strings.ts';
import { Own } from '../../shell/Own.tsx';

const words = h.planChange.clash;

type Side = 'theirs' | 'mine';
type Choices = Readonly<Partial<Record<PlanField, Side>>>;

/** Where only one of the two changed a field, that is taken; where both did, the person chooses. */
const sideOf = ({ byThem, byMe }: ChangedField): Side | undefined =>
  byThem && byMe ? undefined : byMe ? 'mine' : 'theirs';

interface Props {
  /** What both began with. */
  readonly base: Plan;
  readonly newest: PlanVersion;
  readonly mine: Plan;
  readonly busy: boolean;
  readonly problem: string | null;
  readonly save: (plan: Plan) => void;
  readonly discard: () => void;
  readonly back: () => void;
}

function textsOf(plan: Plan): ReadonlyMap<PlanField, { what: string; text: string }> {
  return new Map(t.said.planLines(plan).map(({ field, ...line }) => [field, line]));
}

function Choice(props: {
  readonly field: PlanField;
  readonly side: Side;
  readonly text: string;
  readonly changed: boolean;
  readonly chosen: Side | undefined;
  readonly choose: (side: Side) => void;
}) {
  const { side, text, changed } = props;
  return (
    <td data-label={words.columns[side]}>
      <label>
        <input
          type="radio"
          name={`clash-${props.field}`}
          checked={props.chosen === side}
          onChange={() => props.choose(side)}
        />{' '}
        <span class="pre" dir="auto">
          {text === '' ? words.empty : text}
        </span>
        {!changed && <small> {words.unchanged}</small>}
      </label>
    </td>
  );
}

function Rows(props: {
  readonly plans: Pick<Props, 'base' | 'mine'> & { readonly theirs: Plan };
  readonly changed: readonly ChangedField[];
  readonly chosen: Choices;
  readonly choose: (field: PlanField, side: Side) => void;
}) {
  const { changed, chosen, plans } = props;
  const [base, theirs, mine] = [plans.base, plans.theirs, plans.mine].map(textsOf);
  return (
    <table class="clash-table">
      <thead>
        <tr>
          {Object.values(words.columns).map((column) => (
            <th key={column} scope="col">
              {column}
            </th>
          ))}
        </tr>
      </thead>
      <tbody>
        {changed.map(({ field, byThem, byMe }) => {
          const both = {
            field,
            chosen: chosen[field],
            choose: (s: Side) => props.choose(field, s),
          };
          return (
            <tr key={field}>
              <th scope="row">{mine?.get(field)?.what}</th>
              <td class="pre" data-label={words.columns.before}>
                <Own>{base?.get(field)?.text || words.empty}</Own>
              </td>
              <Choice
                {...both}
                side="theirs"
                text={theirs?.get(field)?.text ?? ''}
                changed={byThem}
              />
              <Choice {...both} side="mine" text={mine?.get(field)?.text ?? ''} changed={byMe} />
            </tr>
          );
        })}
      </tbody>
    </table>
  );
}

function Actions(props: Props & { readonly taken: readonly PlanField[]; readonly open: number }) {
  const { newest, taken, open } = props;
  const nothing = taken.length === 0 && open === 0;
  return (
    <p class="row">
      {nothing ? (
        <button type="button" class="primary" onClick={props.discard}>
          {words.keepTheirs(newest.number)}
        </button>
      ) : (
        <button
          type="button"
          class="primary"
          disabled={props.busy || open > 0}
          onClick={() => props.save(mergePlans(newest.plan, props.mine, taken))}
        >
          {words.save(newest.number + 1)}
        </button>
      )}
      <button type="button" class="quiet" onClick={props.back}>
        {words.back}
      </button>
      {open > 0 && <span role="status">{words.open(open)}</span>}
    </p>
  );
}

/** Two versions that were written from the same one, field by field, and which of them to take. */
export function ClashView(props: Props) {
  const { base, newest, mine } = props;
  const changed = changedFields(base, newest.plan, mine);
  const [own, setOwn] = useState<Choices>({});
  const chosen: Choices = Object.fromEntries(
    changed.map((one) => [one.field, own[one.field] ?? sideOf(one)]),
  );
  const all = (side: Side): void =>
    setOwn(Object.fromEntries(changed.map(({ field }) => [field, side])));
  const fields = changed.map(({ field }) => field);
  return (
    <section class="clash" aria-label={words.title}>
      <h2>{words.title}</h2>
      <p role="alert">{words.what(newest.by, newest.number, h.shell.moment(newest.createdMs))}</p>
      {changed.length === 0 ? (
        <p>{words.same}</p>
      ) : (
        <>
          <p class="row">
            <button type="button" onClick={() => all('theirs')}>
              {words.allTheirs}
            </button>
            <button type="button" onClick={() => all('mine')}>
              {words.allMine}
            </button>
          </p>
          <Rows
            plans={{ base, mine, theirs: newest.plan }}
            changed={changed}
            chosen={chosen}
            choose={(field, side) => setOwn({ ...own, [field]: side })}
          />
        </>
      )}
      {props.problem !== null && (
        <p class="refusal" role="alert">
          {props.problem}
        </p>
      )}
      <Actions
        {...props}
        taken={fields.filter((field) => chosen[field] === 'mine')}
        open={fields.filter((field) => chosen[field] === undefined).length}
      />
    </section>
  );
}
