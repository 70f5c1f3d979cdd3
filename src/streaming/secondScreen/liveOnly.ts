import type { JudgedRepetition } from '../../coaching/judgement.ts';
import { DEFAULT_PLAN, type Plan } from '../../coaching/plan.ts';
import { standingWarnings } from '../../coaching/standingWarnings.ts';
import { NO_MEASURES } from '../../swings/repetition.ts';
import type { PersonView, PracticeView, SensorView } from '../contract.ts';
import type { Lens } from '../feed.ts';

const NOBODY: PersonView = { firstUse: false, painBefore: null, lastSession: null };
const NO_CURVE = { timeS: [], flexionDeg: [], turnDeg: [], keptRotationDeg: [] };
const NO_TARGETS = Object.fromEntries(
  Object.keys(DEFAULT_PLAN.targets).map((key) => [key, null]),
) as Plan['targets'];
/** As many marks as a page shows. */
const MARKS = 24;

/** Of the plan: the hold and the mix. Its name and note may hold a person's. */
const planOf = ({ stage, ratio, targets }: Plan): Plan => ({
  ...DEFAULT_PLAN,
  checklist: [],
  stage,
  ratio,
  targets: { ...NO_TARGETS, holdS: targets.holdS },
});

/** A sensor's name and number would tell which device is worn. */
const sensorOf = ({ sensor, state, ageMs }: SensorView): SensorView => ({
  sensor,
  state,
  ageMs,
  name: '',
  reason: null,
  batteryPct: null,
  rssiDbm: null,
  nominalRateHz: null,
  rateHz: null,
  lostPct: null,
  restNorm: null,
});

/** Kind, verdict and cue; no numbers. */
function lastOf(last: JudgedRepetition | null): JudgedRepetition | null {
  if (last === null) return null;
  if (last.kind !== 'rehearsal') return { ...last, measures: NO_MEASURES };
  return { ...last, measures: NO_MEASURES, verdict: { ...last.verdict, checks: [] } };
}

/** The view with everything blank that a second screen does not show. A new part of the view has to be decided on here. */
const show = (view: PracticeView): PracticeView => ({
  practiceId: view.practiceId,
  hand: view.hand,
  plan: planOf(view.plan),
  stage: view.stage,
  person: NOBODY,
  guide: view.guide && { ...view.guide, endDeg: null },
  ownRange: {},
  source: { ...view.source, reason: null },
  sensors: view.sensors.map(sensorOf),
  phase: view.phase,
  calibration: view.calibration,
  pose: null,
  addressPose: null,
  curve: NO_CURVE,
  ledger: view.ledger,
  strip: view.strip.slice(-MARKS),
  last: lastOf(view.last),
  warnings: standingWarnings(view.warnings),
  keeping: null,
  summary: null,
});

/** What is shown live at the practice, and nothing of the person, the plan or the days before. */
export const LIVE_ONLY: Lens = {
  sections: new Set([
    'practiceId',
    'hand',
    'plan',
    'stage',
    'guide',
    'source',
    'sensors',
    'phase',
    'calibration',
    'ledger',
    'strip',
    'last',
    'warnings',
  ]),
  show,
};
