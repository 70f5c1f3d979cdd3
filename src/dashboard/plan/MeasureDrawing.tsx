import type { TargetMeasure } from '../../coaching/plan.ts';
import type { PoseView } from '../../streaming/contract.ts';
import { PoseDrawing } from '../body/PoseDrawing.tsx';
import { DRILL_ANGLES, POSES, poseOf } from '../body/poses.ts';
import type { ViewName } from '../body/project.ts';
import { DRILL, STEP_AT, type Still, drillAt } from '../drill/model.ts';

interface Picture extends Still {
  readonly view: ViewName;
  readonly ghost: PoseView | null;
}

const { address, top } = POSES;
const [released, caught] = [drillAt(STEP_AT.release), drillAt(DRILL.catchS)];
const atTop: Still = { pose: top, hands: { do: 'hold' } };

/** The arm as it was at the top, on the chest as it is at the catch: what "kept" would look like. */
const ARM_BEHIND = poseOf({ ...DRILL_ANGLES.caught, rotation: 10 });
const STANDING_UP = poseOf({ ...DRILL_ANGLES.caught, lateral: 0, flexion: 12 });

/** The figure: where the movement should be; dashed: where it comes from, or what it should not become. */
const PICTURES: Readonly<Record<TargetMeasure, Picture>> = {
  holdS: { view: 'faceOn', ...atTop, ghost: null },
  chestLeadMs: { view: 'faceOn', ...released, ghost: top },
  leanChangeDeg: { view: 'downTheLine', ...caught, ghost: STANDING_UP },
  addedFlexionDeg: { view: 'downTheLine', ...caught, ghost: top },
  keptRotationDeg: { view: 'downTheLine', ...caught, ghost: ARM_BEHIND },
  turnTowardTargetDeg: { view: 'faceOn', ...caught, ghost: top },
  releaseToCatchMs: { view: 'faceOn', ...caught, ghost: address },
};

/** What a measure is about, drawn. */
export function MeasureDrawing(props: {
  readonly measure: TargetMeasure;
  readonly leftHanded: boolean;
  readonly label: string;
}) {
  const { measure, leftHanded, label } = props;
  return <PoseDrawing {...PICTURES[measure]} leftHanded={leftHanded} label={label} />;
}
