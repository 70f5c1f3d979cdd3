import { useState } from 'preact/hooks';
import type { CoachLink } from '../../streaming/hubContract/coachLink.ts';
import { t } from '../strings/strings.ts';
import { type Coach, post } from './api.ts';

const words = t.coach.consent;

interface Props extends Pick<Coach, 'act'> {
  readonly link: CoachLink;
}

/** What is sent and to whom; agreed to, or taken back. */
export function ConsentPart({ link, act }: Props) {
  const { consent, connection } = link;
  const [older, setOlder] = useState(false);
  const agreed = consent?.send === true;
  return (
    <section aria-labelledby="consent">
      <h2 id="consent">{words.title}</h2>
      <p>{words.what(connection?.coach ?? '')}</p>
      <p>
        <strong>{agreed ? words.agreed(consent.atMs, consent.older) : words.not}</strong>
      </p>
      {agreed ? (
        <>
          <div class="row">
            <button type="button" onClick={() => void act(() => post('consent', { send: false }))}>
              {words.stop}
            </button>
          </div>
          <p class="fine">{words.stopWhy}</p>
        </>
      ) : (
        <>
          <label class="tick">
            <input
              type="checkbox"
              checked={older}
              onChange={(event) => setOlder(event.currentTarget.checked)}
            />{' '}
            {words.older}
          </label>
          <div class="row">
            <button
              type="button"
              class="primary"
              onClick={() => void act(() => post('consent', { send: true, older }))}
            >
              {words.agree}
            </button>
          </div>
        </>
      )}
    </section>
  );
}
