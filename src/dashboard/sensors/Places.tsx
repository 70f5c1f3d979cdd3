import { useEffect, useRef } from 'preact/hooks';
import type { SensorRole } from '../../sensors/sample.ts';
import type { DeskCommand, DeskSensor, DeskView } from '../../streaming/contract.ts';
import { t } from '../strings/strings.ts';
import { Place } from './Place.tsx';
import type { Desk } from './useDesk.ts';

export const PLACES: readonly SensorRole[] = ['chest', 'trailArm', 'club'];

const idAt = (view: DeskView, role: SensorRole): string | null =>
  view.sensors.find((s) => s.role === role)?.id ?? null;

/** The place that a command changes. */
function placeOf(command: DeskCommand, view: DeskView): SensorRole | null {
  if (command.type === 'assign' || command.type === 'assign-by-tap') return command.role;
  if (command.type !== 'forget') return null;
  return view.sensors.find((s) => s.id === command.id)?.role ?? null;
}

/**
 * What was pressed may be gone when a place has got or given its sensor: the focus goes on at that place.
 * @returns `send`, with an eye on where the person is
 */
export function useFocusAtPlace(view: DeskView, send: Desk['send']): Desk['send'] {
  const at = useRef<SensorRole | null>(null);
  const worn = PLACES.map((role) => idAt(view, role) ?? '').join(' ');
  useEffect(() => {
    if (at.current !== null && document.activeElement === document.body)
      document.getElementById(`place-${at.current}`)?.focus();
    at.current = null;
  }, [worn]);
  return (command) => {
    at.current = placeOf(command, view);
    send(command);
  };
}

/** A sensor that is looked for changes its state too often to be told of each time. */
const heardOf = (role: SensorRole, name: string, state: DeskSensor['state']): string =>
  t.desk.heard(
    t.sensors[role],
    name,
    state === 'streaming' ? t.sensors.state.streaming : t.desk.notConnected,
  );

/** How each worn sensor does, in few words, for those who hear the page: told when it changes. */
const heard = (view: DeskView): string =>
  view.sensors
    .flatMap(({ role, name, state }) => (role === null ? [] : [heardOf(role, name, state)]))
    .join(' ');

/** Where sensors are worn, and which. */
export function Places({ view, send }: { readonly view: DeskView; readonly send: Desk['send'] }) {
  const worn = PLACES.some((role) => idAt(view, role) !== null);
  const both = PLACES.slice(0, 2).every((role) => idAt(view, role) !== null);
  return (
    <section class="desk-part" aria-labelledby="places">
      <div class="desk-head">
        <h2 id="places">{t.desk.places}</h2>
        {both && (
          <button type="button" class="quiet" onClick={() => send({ type: 'swap' })}>
            {t.desk.swap}
          </button>
        )}
      </div>
      {view.notKept !== null && <p class="notice">{t.said.refusal(view.notKept)}</p>}
      <ul class="places">
        {PLACES.map((role) => (
          <Place key={role} role={role} view={view} send={send} />
        ))}
      </ul>
      {worn && view.notKept === null && <p class="fine">{t.desk.remembered}</p>}
      <p class="hidden" role="status">
        {heard(view)}
      </p>
    </section>
  );
}
