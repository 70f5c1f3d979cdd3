import type {
  CodeView,
  PairedScreen,
  SecondScreenView,
} from '../../streaming/secondScreenContract.ts';
import { Qr } from '../shell/Qr.tsx';
import { t } from '../strings/strings.ts';
import { type SecondScreenState, secondScreenAsk } from './useSecondScreen.ts';

const words = t.secondScreen;

type Act = Pick<SecondScreenState, 'act'>;

function CodePart({ code, act }: Act & { readonly code: CodeView }) {
  const { digits, state, leftS } = code;
  return (
    <div>
      <h2>{words.codeTitle}</h2>
      {digits === null ? (
        <p class="refusal" role="status">
          {words.codeState[state]}
        </p>
      ) : (
        <>
          <p class="code-digits" data-testid="code">
            {digits.slice(0, 3)} {digits.slice(3)}
          </p>
          <p class="fine">{words.codeLeft(leftS)}</p>
        </>
      )}
      <button type="button" onClick={() => act(secondScreenAsk.code)}>
        {words.newCode}
      </button>
      <p class="fine">{words.qrWhy}</p>
    </div>
  );
}

function Row({ screen, act }: Act & { readonly screen: PairedScreen }) {
  const { id, address, pairedMs, watching } = screen;
  return (
    <li>
      <span>{words.screen(address, words.time(pairedMs))}</span>
      <strong>{watching ? words.watching : words.notWatching}</strong>
      <button
        type="button"
        aria-label={words.endNamed(address)}
        onClick={() => act(() => secondScreenAsk.end(id))}
      >
        {words.end}
      </button>
    </li>
  );
}

function Screens({ screens, act }: Act & { readonly screens: readonly PairedScreen[] }) {
  return (
    <section aria-labelledby="screens">
      <h2 id="screens">{words.screens}</h2>
      {screens.length === 0 && <p>{words.noScreens}</p>}
      <ul data-testid="screens">
        {screens.map((screen) => (
          <Row key={screen.id} screen={screen} act={act} />
        ))}
      </ul>
      {screens.length > 1 && (
        <button type="button" onClick={() => act(secondScreenAsk.endAll)}>
          {words.endAll}
        </button>
      )}
    </section>
  );
}

/** On: how to get there, with which code, and who is there. */
export function SwitchedOn({
  on,
  act,
}: Act & { readonly on: NonNullable<SecondScreenView['on']> }) {
  return (
    <>
      {!on.reachable && (
        <p class="refusal" role="alert">
          {words.unreachable}
        </p>
      )}
      <section class="way-in">
        <div>
          <h2>{words.open}</h2>
          <p>
            <code>{on.url}</code>
          </p>
          <Qr rows={on.qr} label={words.qr(on.url)} />
        </div>
        <CodePart code={on.code} act={act} />
      </section>
      <Screens screens={on.screens} act={act} />
      <p class="fine">{words.firewall}</p>
      <div class="row">
        <button type="button" onClick={() => act(secondScreenAsk.off)}>
          {words.switchOff}
        </button>
      </div>
    </>
  );
}
