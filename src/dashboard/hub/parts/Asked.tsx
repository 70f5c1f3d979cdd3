import type { ComponentChildren } from 'preact';
import type { Answer } from '../../review/useAnswer.ts';
import { to } from '../shell/router.ts';
import { h } from '../../strings/hub.ts';

function Nowhere() {
  return (
    <div class="hub-failed" role="alert">
      <h2>{h.shell.nowhere}</h2>
      <p>{h.shell.nowhereHelp}</p>
      <a href={to('home')}>{h.shell.toStart}</a>
    </div>
  );
}

/** What was asked of the hub: while it comes, where it is refused, or what it is. */
export function Asked<T>(props: {
  readonly of: Answer<T>;
  readonly children: (data: T) => ComponentChildren;
}) {
  const { data, problem, missing, again } = props.of;
  if (missing) return <Nowhere />;
  if (problem !== null)
    return (
      <div class="hub-failed" role="alert">
        <h2>{h.shell.failed}</h2>
        <p>{problem}</p>
        <button type="button" onClick={again}>
          {h.shell.again}
        </button>
      </div>
    );
  if (data === null) return <p role="status">{h.shell.loading}</p>;
  return <>{props.children(data)}</>;
}
