import type { TargetMeasure } from '../../coaching/plan.ts';
import type { PoseView } from '../../streaming/contract.ts';
import { PoseDrawing } from '../body/PoseDrawing.tsx';
import { POSES, poseOf } from '../body/poses.ts';
import type { ViewName } from '../body/project.ts';

interface Picture {
  readonly view: ViewName;
  readonly pose: PoseView;
  readonly ghost: PoseView | null;
}

const { address, top, released, caught } = POSES;

/** The arm as it was at the top, on the chest as it is at the catch: what "kept" would look like. */
const ARM_BEHIND = poseOf({
  turn: -40,
  lateral: -4,
  flexion: 34,
  plane: 40,
  elevation: 62,
  rotation: 10,
});
const STANDING_UP = poseOf({ turn: -40, flexion: 12, plane: 40, elevation: 62, rotation: 62 });

/** Solid: where the movement should be; dashed: where it comes from, or what it should not become. */
const PICTURES: Readonly<Record<TargetMeasure, Picture>> = {
  holdS: { view: 'faceOn', pose: top, ghost: null },
  chestLeadMs: { view: 'faceOn', pose: released, ghost: top },
  leanChangeDeg: { view: 'downTheLine', pose: caught, ghost: STANDING_UP },
  addedFlexionDeg: { view: 'downTheLine', pose: caught, ghost: top },
  keptRotationDeg: { view: 'downTheLine', pose: caught, ghost: ARM_BEHIND },
  turnTowardTargetDeg: { view: 'faceOn', pose: caught, ghost: top },
  releaseToCatchMs: { view: 'faceOn', pose: caught, ghost: address },
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
