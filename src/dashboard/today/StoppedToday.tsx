import { type Stop, stopToday } from '../../streaming/contract.ts';
import { useSection } from '../feed/hooks.ts';
import { Refusal, useAsk } from '../shell/Ask.tsx';
import { t } from '../strings/strings.ts';

/** The stop of today, if there was one. */
export const useStopToday = (): Stop | null => stopToday(useSection('person')?.stop, Date.now());

const timeOfDay = (ms: number): string =>
  new Date(ms).toLocaleTimeString(t.locale, { hour: '2-digit', minute: '2-digit' });

/** Comes before anything that starts; stays for the day once it was read. */
export function StoppedToday({ stop }: { readonly stop: Stop }) {
  const { ask, refusal } = useAsk();
  return (
    <section class="stopped-today" role="alert" data-testid="stopped-today">
      <h2>
        {t.stop.title} <small>{t.stop.at(timeOfDay(stop.atMs))}</small>
      </h2>
      <p>{t.stop.text[stop.id]}</p>
      <Refusal text={refusal} />
      {!stop.read && (
        <button type="button" class="primary" onClick={() => void ask({ type: 'stop-read' })}>
          {t.stop.read}
        </button>
      )}
    </section>
  );
}
