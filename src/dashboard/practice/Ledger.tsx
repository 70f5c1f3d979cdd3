import type { ComponentChildren } from 'preact';
import { type Plan, askedRatio } from '../../coaching/plan.ts';
import type { LedgerView } from '../../streaming/contract.ts';
import { useSection } from '../feed/hooks.ts';
import { t } from '../strings/strings.ts';
import { showDialog } from './dialogs.ts';
import { markOf } from './kind.ts';
import { Shape } from './shapes.tsx';

function ratioText(ledger: LedgerView, plan: Plan): string {
  const { rehearsals, balls } = askedRatio(plan);
  const asked = t.ledger.asked(rehearsals, balls);
  if (ledger.ratio === null) return t.ledger.noRatio(asked);
  return t.ledger.kept(t.decimal(ledger.ratio, 1), asked);
}

/** How much of the session's goal is done, and the row of passes once it is one. */
function countText({ done, goal, inARow }: LedgerView): string {
  const goalText = done === goal ? t.count.reached : t.count.done(done, goal);
  return inARow < 2 ? goalText : `${goalText} · ${t.count.row(inARow)}`;
}

const SHOWN = 24;

function Strip() {
  const strip = useSection('strip') ?? [];
  if (strip.length === 0) return <p class="strip-empty">{t.ledger.empty}</p>;
  return (
    <ol class="strip" reversed aria-label={t.ledger.legend}>
      {strip
        .slice(-SHOWN)
        .reverse()
        .map((entry) => (
          <li key={entry.index} class={entry.corrected ? 'corrected' : undefined}>
            <button
              type="button"
              title={t.ledger.entry[markOf(entry)]}
              aria-label={`${entry.index}: ${t.ledger.entry[markOf(entry)]}`}
              onClick={() => showDialog({ kind: 'correct', index: entry.index })}
            >
              <Shape mark={markOf(entry)} />
            </button>
          </li>
        ))}
    </ol>
  );
}

/** How many of each, the mix kept, how far the session is, and what is due. */
function Counts({ children }: { readonly children?: ComponentChildren }) {
  const ledger = useSection('ledger');
  const plan = useSection('plan');
  if (ledger === null || plan === null) return <section class="ledger" />;
  const isBall = ledger.next === 'ball';
  return (
    <section class="ledger" aria-labelledby="ledger-label" data-testid="ledger">
      <h2 id="ledger-label" class="label">
        {t.ledger.title}
      </h2>
      <p class="ledger-counts">
        <strong>{t.ledger.rehearsals(ledger.rehearsals)}</strong>
        <strong>{t.ledger.balls(ledger.balls)}</strong>
        <span>{ratioText(ledger, plan)}</span>
        <span data-testid="count">{countText(ledger)}</span>
      </p>
      {children}
      <p class={`due${isBall ? ' due-ball' : ''}`} data-testid="due">
        {t.ledger.next(ledger)}
      </p>
    </section>
  );
}

/** Without the strip: its signs are buttons. */
export const LedgerCounts = () => <Counts />;

/** Rehearsals and balls in order, the mix kept, and what is due. */
export const Ledger = () => (
  <Counts>
    <Strip />
  </Counts>
);
