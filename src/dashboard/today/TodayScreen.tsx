import { useState } from 'preact/hooks';
import { type Plan, askedRatio } from '../../coaching/plan.ts';
import type { TodayView } from '../../streaming/todayContract.ts';
import { CoachWrote } from '../coach/CoachWrote.tsx';
import { useSection } from '../feed/hooks.ts';
import { Refusal, useAsk } from '../shell/Ask.tsx';
import { Caution } from '../shell/Caution.tsx';
import { go, hrefOf, routeForStage } from '../shell/router.ts';
import { t } from '../strings/strings.ts';
import { StoppedToday, useStopToday } from './StoppedToday.tsx';
import { FirstVisit } from './FirstVisit.tsx';
import { SinceLast } from './SinceLast.tsx';
import { useToday } from './useToday.ts';
import { Week } from './Week.tsx';
import { Own } from '../shell/Own.tsx';

type Hand = 'left' | 'right';
type Sensors = 'demo' | 'bluetooth';

function Choice<T extends string>(props: {
  readonly title: string;
  readonly names: Readonly<Record<T, string>>;
  readonly value: T;
  readonly set: (value: T) => void;
}) {
  const { title, names, value, set } = props;
  return (
    <fieldset class="choice">
      <legend>{title}</legend>
      {(Object.keys(names) as T[]).map((name) => (
        <label key={name} class={name === value ? 'chosen' : ''}>
          <input type="radio" name={title} checked={name === value} onChange={() => set(name)} />
          {names[name]}
        </label>
      ))}
    </fieldset>
  );
}

function PlanSentence({ next }: { readonly next: Plan | null }) {
  const running = useSection('plan');
  const plan = next ?? running;
  if (plan === null) return null;
  const { rehearsals, balls } = askedRatio(plan);
  const hold = plan.targets.holdS?.min;
  const text = hold === undefined ? t.today.noHold : `${t.written(String(hold))}\u00a0${t.unit.s}`;
  return <p class="lead">{t.today.plan(rehearsals, balls, text)}</p>;
}

type Last = NonNullable<TodayView['last']>;

function lastText({ startedMs, notCounted, problem, repetitions }: Last): string {
  const when = t.date.weekday(startedMs);
  if (notCounted === null || notCounted === 'simulated') return t.today.last(when, repetitions);
  const state = t.today.lastState[notCounted](when);
  return notCounted === 'failed' ? `${state} ${t.said.refusal(problem ?? '')}` : state;
}

/** From what is kept; where nothing is, from what is known of the person. */
function LastTime({ view }: { readonly view: TodayView | null }) {
  const known = useSection('person')?.lastSession ?? null;
  const last = view === null ? known && { ...known, notCounted: null, problem: null } : view.last;
  if (last === null) return view?.onlySimulated === true ? <p>{t.counts.onlySimulated}</p> : null;
  return (
    <p>
      {lastText(last)}
      {last.note !== '' && (
        <>
          {' '}
          {t.today.lastNote}:{' '}
          <Own>
            <q>{last.note}</q>
          </Own>
        </>
      )}
    </p>
  );
}

/** @param calm not what the screen is about: on a day with a stop */
function Start({ calm }: { readonly calm: boolean }) {
  const said = useSection('person')?.about?.hand;
  const present = useSection('hand');
  const [chosen, setHand] = useState<Hand | null>(null);
  const hand = chosen ?? said ?? present ?? 'right';
  const offered = useSection('person')?.sensors ?? 'demo';
  const [chosenSensors, setSensors] = useState<Sensors | null>(null);
  const sensors = chosenSensors ?? offered;
  const { ask, refusal } = useAsk();
  return (
    <form
      class="start"
      onSubmit={(event) => {
        event.preventDefault();
        void ask({ type: 'begin', kind: 'guided', hand, sensors });
      }}
    >
      <Choice title={t.today.hand} names={t.today.hands} value={hand} set={setHand} />
      <Choice
        title={t.today.sensors}
        names={t.today.sensorKinds}
        value={sensors}
        set={setSensors}
      />
      <p class="fine">
        {sensors === 'demo' ? t.today.demoWhy : <a href={hrefOf('sensors')}>{t.today.ownWhy}</a>}
      </p>
      <Refusal text={refusal} />
      <div class="row">
        <button type="submit" class={calm ? '' : 'primary'}>
          {t.today.start}
        </button>
        <DemoButton hand={hand} />
      </div>
    </form>
  );
}

function DemoButton({ hand }: { readonly hand: Hand }) {
  const source = useSection('source');
  const stage = useSection('stage');
  const { ask } = useAsk();
  const running = source?.kind === 'synthetic' && stage === 'practice';
  const watch = (): void => {
    if (running) go('practice');
    else void ask({ type: 'begin', kind: 'demo', hand, sensors: 'demo' });
  };
  return (
    <button type="button" onClick={watch}>
      {t.today.demo}
    </button>
  );
}

/** What is asked today, and the way into a practice. */
export function TodayScreen() {
  const stage = useSection('stage');
  const { plan: view, today } = useToday();
  const firstUse = useSection('person')?.firstUse ?? true;
  const stop = useStopToday();
  const underWay = stage !== null && stage !== 'stopped' && routeForStage(stage) === 'ready';
  return (
    <main id="main" class="today" tabIndex={-1}>
      <div class="today-start">
        <h1>{t.today.title}</h1>
        {stop !== null && <StoppedToday stop={stop} />}
        <PlanSentence next={view?.plan ?? null} />
        {view !== null && <Week view={view} />}
        <LastTime view={today} />
        {stop === null && today !== null && (
          <SinceLast view={today} author={view?.author ?? null} />
        )}
        <CoachWrote />
        {underWay && (
          <p>
            <a href={hrefOf('ready')}>{t.today.goOn}</a>
          </p>
        )}
        {(stop === null || stop.read) && <Start calm={stop !== null} />}
      </div>
      <FirstVisit open={firstUse} />
      <Caution />
    </main>
  );
}
