import { IN_A_ROW, type Proposal } from '../../coaching/proposal.ts';
import type { PracticeSummary } from '../../coaching/summary.ts';
import type { PlanView } from '../../streaming/planContract.ts';
import type { TodayView } from '../../streaming/todayContract.ts';
import { useSection } from '../feed/hooks.ts';
import { sinceText } from '../progress/SinceLine.tsx';
import { hrefOf } from '../shell/router.ts';
import { sided } from '../strings/sided.ts';
import { t } from '../strings/strings.ts';

const words = t.today.since;

/** What to do, as the student got it at the end of the practice before. */
function focusText(summary: PracticeSummary): string {
  const { next, faults, scored } = summary;
  if (next.code === 'pain') return words.painFirst;
  if (next.code === 'less') return words.fewer;
  const fault = faults.find(({ cue }) => next.code === 'one-thing' && next.text.includes(cue.text));
  return fault === undefined
    ? t.said.nextStep(summary)
    : words.again(t.said.cue(fault.cue), fault.count, scored);
}

function proposalText(proposal: Proposal): string {
  const { some, all, target, stage, done } = t.today.proposal;
  if (proposal.kind === 'target') {
    const { next, met, asked } = proposal;
    const name = t.measures.info[next].name;
    return `${some(met.length, asked, IN_A_ROW)} ${target(name, t.measures.target(next, proposal.target))}`;
  }
  return `${all(IN_A_ROW)} ${proposal.kind === 'done' ? done : stage(t.names.stages[proposal.stage].name)}`;
}

/** A plan is changed by whoever wrote it. */
function ProposalLine(props: {
  readonly proposal: Proposal;
  readonly author: PlanView['author'] | null;
}) {
  const { proposal, author } = props;
  const { title, askCoach, change } = t.today.proposal;
  return (
    <p>
      <b>{title}:</b> {proposalText(proposal)}{' '}
      {proposal.kind !== 'target' &&
        (author === 'coach' ? askCoach : <a href={hrefOf('plan')}>{change}</a>)}
    </p>
  );
}

/** What changed, what to do today and what may come next. */
export function SinceLast(props: {
  readonly view: TodayView;
  readonly author: PlanView['author'] | null;
}) {
  const { since, focus, proposal } = props.view;
  const hand = useSection('hand');
  if (since === null) return null;
  return (
    <div class="since-last" data-testid="since-last">
      <p>
        <b>{words.title}:</b> {sided(sinceText(since), hand)}{' '}
        {since.kind === 'changed' && <small>{words.of(since.now.count, since.before.count)}</small>}
      </p>
      {focus !== null && (
        <p>
          <b>{words.focus}:</b> {sided(focusText(focus), hand)}
        </p>
      )}
      {proposal !== null && <ProposalLine proposal={proposal} author={props.author} />}
    </div>
  );
}
