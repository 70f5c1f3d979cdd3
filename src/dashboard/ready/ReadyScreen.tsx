import { useEffect, useRef } from 'preact/hooks';
import type { Stage } from '../../streaming/contract.ts';
import { useSection } from '../feed/hooks.ts';
import { Warnings } from '../practice/Warnings.tsx';
import { Caption } from '../sound/Caption.tsx';
import { go } from '../shell/router.ts';
import { t } from '../strings/strings.ts';
import { CheckStep } from './CheckStep.tsx';
import { GuidedStep } from './GuidedStep.tsx';
import { RangeStep } from './RangeStep.tsx';
import { SafetyStep } from './SafetyStep.tsx';
import { StrapStep } from './StrapStep.tsx';

const STEPS = ['safety', 'strap', 'check', 'calibrate', 'range', 'address'] as const;

function Steps({ stage }: { readonly stage: Stage }) {
  const at = STEPS.findIndex((step) => step === stage);
  return (
    <ol class="steps" aria-label={t.ready.title}>
      {STEPS.map((step, i) => (
        <li
          key={step}
          class={i < at ? 'step-done' : i === at ? 'step-now' : 'step-later'}
          aria-current={i === at ? 'step' : undefined}
        >
          {t.ready.steps[step]}
          {step === 'range' && <small> {t.ready.optional}</small>}
          {i < at && <span class="hidden"> {t.ready.done}</span>}
        </li>
      ))}
    </ol>
  );
}

function Stopped() {
  return (
    <div class="ready-form">
      <h2 tabIndex={-1}>{t.ready.stopped.title}</h2>
      <button type="button" onClick={() => go('today')}>
        {t.ready.stopped.back}
      </button>
    </div>
  );
}

function Present({ stage }: { readonly stage: Stage }) {
  const guide = useSection('guide');
  switch (stage) {
    case 'safety':
      return <SafetyStep />;
    case 'strap':
      return <StrapStep />;
    case 'check':
      return <CheckStep />;
    case 'range':
      return guide === null ? <RangeStep /> : <GuidedStep />;
    case 'calibrate':
    case 'address':
      return <GuidedStep />;
    default:
      return <Stopped />;
  }
}

/** The guided start: a line of steps, the present one large. */
export function ReadyScreen({ caption }: { readonly caption: string | null }) {
  const stage = useSection('stage');
  const main = useRef<HTMLElement>(null);
  useEffect(() => {
    main.current?.querySelector<HTMLElement>('h2')?.focus({ preventScroll: true });
    scrollTo(0, 0);
  }, [stage]);
  if (stage === null) return null;
  return (
    <main id="main" ref={main} class="ready" tabIndex={-1}>
      <h1 class="hidden">{t.ready.title}</h1>
      {stage !== 'stopped' && <Steps stage={stage} />}
      <Warnings />
      <Present stage={stage} />
      <Caption words={caption} />
    </main>
  );
}
