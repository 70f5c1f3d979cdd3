import { describe, expect, it } from 'vitest';
import {
  type RezeroState,
  createRezero,
  followDrift,
  rezero,
  takeReference,
} from '../../src/analysis/rezero.ts';
import { type Headings, headingOf } from '../../src/body/pose.ts';
import type { BodyFrame } from '../../src/body/segments.ts';
import { degrees, radians, wrapDeg } from '../../src/math/angle.ts';
import { type Quat, aboutX, aboutY, aboutZ, multiply } from '../../src/math/quat.ts';
import { ZERO } from '../../src/math/vec3.ts';

/** A golfer whose two headings drift at steady rates, deg/s; the truth is what `headings` should take off. */
interface Drifting {
  readonly state: RezeroState;
  readonly headings: Headings;
  readonly perS: { readonly chest: number; readonly arm: number };
  timeS: number;
}

const begin = (chest: number, arm: number): Drifting => ({
  state: createRezero(),
  headings: { chest: 0, trailArm: 0 },
  perS: { chest, arm },
  timeS: 0,
});

/** Trunk 38 deg forward and 6 deg to the trail side; the arm hangs down and a little forward. */
const TRUNK = multiply(aboutX(radians(6)), aboutZ(radians(-38)));
const ARM = aboutZ(radians(8));
const ARM_AT_ADDRESS = headingOf(ARM);

/** What is left of the drift, deg. */
const chestError = (d: Drifting): number =>
  wrapDeg(d.perS.chest * d.timeS + degrees(d.headings.chest));
const armError = (d: Drifting): number =>
  wrapDeg(d.perS.arm * d.timeS + degrees(d.headings.trailArm));

function goOn(d: Drifting, seconds: number, each?: () => void): void {
  const endS = d.timeS + seconds;
  for (; d.timeS < endS; d.timeS += 0.01) {
    followDrift(d.state, { timeS: d.timeS, gap: false }, d.headings);
    each?.();
  }
}

/** Stands still at address, turned by `deg` from the reference, seen through the headings as they are. */
function address(d: Drifting, deg = 0, seconds = 1.5): void {
  const seen = (q: Quat, error: number): Quat => multiply(aboutY(radians(deg + error)), q);
  goOn(d, seconds, () => {
    const frame: BodyFrame = {
      timeS: d.timeS,
      thorax: seen(TRUNK, chestError(d)),
      humerus: seen(ARM, armError(d)),
      thoraxRate: ZERO,
      humerusRate: ZERO,
      gap: false,
      saturated: false,
    };
    rezero(d.state, frame, d.headings, ARM_AT_ADDRESS);
  });
}

function practise(d: Drifting, addresses: number, deg = 0): void {
  for (let i = 0; i < addresses; i++) {
    goOn(d, 8);
    address(d, deg);
  }
}

describe('headings at the still addresses', () => {
  it('learn a steady drift', () => {
    const d = begin(0.08, -0.1);
    practise(d, 20);
    expect(Math.abs(chestError(d))).toBeLessThan(1);
    expect(Math.abs(armError(d))).toBeLessThan(1);
  });

  it('do not follow an address that lies elsewhere than the others', () => {
    const d = begin(0, 0);
    practise(d, 20);
    address(d, 5);
    expect(Math.abs(chestError(d))).toBeLessThan(1.5);
  });

  it.each([20, 60, 150])(
    'are found again after a break in which they drifted by %i deg',
    (drifted) => {
      const d = begin(0, 0);
      practise(d, 5);
      const breakS = 600;
      const away = { ...d, perS: { chest: 0, arm: 0 } };
      goOn(away, breakS);
      d.timeS = away.timeS;
      // a drift that nobody could know of: the sensors warmed up meanwhile
      d.headings.chest += radians(drifted);
      d.headings.trailArm -= radians(drifted);
      address(d, 0, 2);
      expect(Math.abs(chestError(d))).toBeLessThan(6);
      expect(Math.abs(armError(d))).toBeLessThan(6);
    },
  );

  it('are not drawn to who bends down elsewhere while they are well known', () => {
    const d = begin(0, 0);
    practise(d, 5);
    goOn(d, 8);
    address(d, 20);
    expect(Math.abs(chestError(d))).toBeLessThan(1);
  });

  it('begin anew at a new reference: how the old one lay to the addresses says nothing of it', () => {
    const d = begin(0, 0);
    practise(d, 20, 6);
    // the new reference is taken where the person stands: turn is 0 there
    d.headings.chest = radians(-6);
    d.headings.trailArm = radians(-6);
    takeReference(d.state);
    const before = chestError(d);
    practise(d, 5, 6);
    expect(Math.abs(chestError(d) - before)).toBeLessThan(0.5);
  });
});
