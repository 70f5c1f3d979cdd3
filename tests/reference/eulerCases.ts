// Compares our angles with a file of worked cases (scipy.spatial.transform.Rotation; see the file's meta).
import { thoraxAngles, humerusAngles, torsionOutward } from '../../src/body/angles.ts';
import { degrees, wrapDeg } from '../../src/math/angle.ts';
import {
  type EulerAngles,
  eulerXZY,
  eulerYXY,
  eulerYXZ,
  eulerYZX,
  eulerZXY,
} from '../../src/math/euler.ts';
import { type Matrix3, type Quat, mirrorQuat, relative, toMatrix } from '../../src/math/quat.ts';

type Numbers4 = [number, number, number, number];
interface Sequence {
  deg: [number, number, number];
}
interface EulerCase {
  id: string;
  segment: string;
  golferHand?: string;
  side?: string;
  quaternionWxyz: Numbers4;
  rightEquivalentQuaternionWxyz?: Numbers4;
  thoraxQuaternionWxyz?: Numbers4;
  humerusQuaternionWxyz?: Numbers4;
  matrixRows: number[][];
  sequences?: Record<string, Sequence | null>;
  sequencesRightEquivalent?: Record<string, Sequence | null>;
  tiltTorsionRightEquivalent?: Record<string, number | null> | null;
  anatomical?: Record<string, number | null>;
  golfer?: Record<string, number | null>;
  upInThorax?: number[];
  leanFromVertical?: number | null;
  singularSequences: string[];
  notes: string;
}
export interface CaseFile {
  cases: EulerCase[];
}
export interface CaseResult {
  id: string;
  largestDeg: number;
  toleranceDeg: number;
  worst: string;
  passed: boolean;
}

const SEQUENCES: Record<string, (m: Matrix3) => EulerAngles> = {
  YXZ: eulerYXZ,
  ZXY: eulerZXY,
  YZX: eulerYZX,
  XZY: eulerXZY,
  YXY_ISB: eulerYXY,
};

const toQuat = ([w, x, y, z]: Numbers4): Quat => ({ w, x, y, z });

export function checkCases(file: CaseFile): CaseResult[] {
  if (!Array.isArray(file.cases)) throw new Error('no list "cases"');
  return file.cases.map(checkCase);
}

function checkCase(c: EulerCase): CaseResult {
  const deviations = new Map<string, number>();
  const compare = (name: string, got: number | null, want: number | null | undefined) => {
    if (want === null || want === undefined) return;
    deviations.set(name, got === null ? Infinity : Math.abs(wrapDeg(got - want)));
  };
  const q = toQuat(c.quaternionWxyz);
  compareMatrix(c, q, deviations);
  if (c.segment.startsWith('thorax')) compareThorax(c, q, compare);
  else compareHumerus(c, compare);
  const [worst, largestDeg] = [...deviations].reduce((a, b) => (b[1] > a[1] ? b : a), ['', 0]);
  const toleranceDeg = /near-singular/.test(c.notes) ? 1e-4 : 1e-6;
  return { id: c.id, largestDeg, toleranceDeg, worst, passed: largestDeg <= toleranceDeg };
}

type Compare = (name: string, got: number | null, want: number | null | undefined) => void;

/** Matrix components must agree to 1e-9; shown on the scale of the angles' tolerance. */
function compareMatrix(c: EulerCase, q: Quat, deviations: Map<string, number>): void {
  toMatrix(q).forEach((row, i) =>
    row.forEach((value, j) => {
      const off = Math.abs(value - (c.matrixRows[i]?.[j] ?? NaN));
      deviations.set(`M${i}${j}`, off <= 1.1e-9 ? 0 : Infinity);
    }),
  );
}

function compareSequences(
  m: Matrix3,
  wanted: Record<string, Sequence | null> | undefined,
  compare: Compare,
): void {
  for (const [name, sequence] of Object.entries(wanted ?? {})) {
    const angles = SEQUENCES[name]?.(m);
    if (!angles || !sequence) continue;
    sequence.deg.forEach((want, i) => compare(`${name}[${i}]`, degrees(angles[i] ?? NaN), want));
  }
}

function compareThorax(c: EulerCase, q: Quat, compare: Compare): void {
  compareSequences(toMatrix(q), c.sequences, compare);
  const a = thoraxAngles(q);
  compare('turnLeft', degrees(a.turn), c.anatomical?.['turnLeft']);
  compare('lateralRight', degrees(a.lateral), c.anatomical?.['lateralRight']);
  compare('flexionForward', degrees(a.flexion), c.anatomical?.['flexionForward']);
  compare('lean', degrees(a.lean), c.leanFromVertical);
  const g = thoraxAngles(c.golferHand === 'left' ? mirrorQuat(q) : q);
  compare('turnTowardTarget', degrees(g.turn), c.golfer?.['turnTowardTarget']);
  compare('lateralTowardLead', -degrees(g.lateral), c.golfer?.['lateralTowardLead']);
  compare('golfer flexion', degrees(g.flexion), c.golfer?.['flexionForward']);
}

function compareHumerus(c: EulerCase, compare: Compare): void {
  const side = (q: Quat) => (c.side === 'left' ? mirrorQuat(q) : q);
  const given = c.thoraxQuaternionWxyz && c.humerusQuaternionWxyz;
  const inThorax = given
    ? relative(side(toQuat(c.thoraxQuaternionWxyz!)), side(toQuat(c.humerusQuaternionWxyz!)))
    : side(toQuat(c.quaternionWxyz));
  compareSequences(toMatrix(inThorax), c.sequencesRightEquivalent, compare);
  const h = humerusAngles(inThorax);
  compare('elevation', degrees(h.elevation), c.anatomical?.['elevation']);
  compare('plane', h.plane === null ? null : degrees(h.plane), c.anatomical?.['planeOfElevation']);
  compare(
    'external rotation',
    h.externalRotation === null ? null : degrees(h.externalRotation),
    c.anatomical?.['externalRotationYXY'],
  );
  compare(
    'torsion outward',
    degrees(torsionOutward(inThorax)),
    c.anatomical?.['externalRotationTorsion'],
  );
}
