import type { ComponentChildren } from 'preact';
import { useEffect } from 'preact/hooks';
import { Caution } from '../../shell/Caution.tsx';
import { h } from '../../strings/hub.ts';
import { Own } from '../../shell/Own.tsx';

/** One page with its name in the window's title. */
export function HubPage(props: {
  readonly title: string;
  /** Shown above the title, to go one step back. */
  readonly above?: ComponentChildren;
  readonly narrow?: boolean;
  /** Two columns that need the width. */
  readonly wide?: boolean;
  /** What is shown brings its own heading. */
  readonly bare?: boolean;
  readonly children: ComponentChildren;
}) {
  useEffect(() => {
    document.title = h.shell.title(props.title);
  }, [props.title]);
  return (
    <main
      id="main"
      class={props.narrow ? 'hub narrow' : props.wide ? 'hub wide' : 'hub'}
      tabIndex={-1}
    >
      {props.above !== undefined && <p class="above">{props.above}</p>}
      {props.bare !== true && (
        <h1>
          <Own>{props.title}</Own>
        </h1>
      )}
      {props.children}
      <Caution />
    </main>
  );
}
