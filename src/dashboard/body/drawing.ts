import type { PoseView, PracticeView } from '../../streaming/contract.ts';
import { type Figure, type Point, type ViewName, figure } from './project.ts';

const SVG = 'http://www.w3.org/2000/svg';

function part(parent: SVGElement, tag: string, name: string): SVGElement {
  const element = document.createElementNS(SVG, tag);
  element.setAttribute('class', name);
  parent.append(element);
  return element;
}

const points = (all: readonly Point[]): string =>
  all.map((p) => `${p.x.toFixed(3)},${p.y.toFixed(3)}`).join(' ');

function setLine(line: SVGElement, [a, b]: readonly [Point, Point]): void {
  line.setAttribute('points', points([a, b]));
}

/** One figure's elements, made once and moved each frame: no tree is compared. */
class Limbs {
  readonly #group: SVGElement;
  readonly #trunk: SVGElement;
  readonly #front: SVGElement;
  readonly #head: SVGElement;
  readonly #arm: SVGElement;
  readonly #turned: SVGElement;

  constructor(svg: SVGElement, name: string) {
    this.#group = part(svg, 'g', name);
    this.#head = part(this.#group, 'circle', 'head');
    this.#head.setAttribute('r', '0.1');
    this.#trunk = part(this.#group, 'polygon', 'trunk');
    this.#front = part(this.#group, 'polyline', 'front');
    this.#turned = part(this.#group, 'polyline', 'turned');
    this.#arm = part(this.#group, 'polyline', 'arm');
  }

  show(shape: Figure | null): void {
    this.#group.setAttribute('visibility', shape === null ? 'hidden' : 'visible');
    if (shape === null) return;
    this.#trunk.setAttribute('points', points(shape.trunk));
    setLine(this.#front, shape.front);
    this.#front.setAttribute('visibility', shape.facing ? 'inherit' : 'hidden');
    setLine(this.#arm, shape.arm);
    setLine(this.#turned, shape.turned);
    this.#head.setAttribute('cx', shape.head.x.toFixed(3));
    this.#head.setAttribute('cy', shape.head.y.toFixed(3));
  }
}

const FLOOR_Y = 0.49;

/** Legs, ground and ball: drawn only so that the trunk stands on something and faces something. */
function ground(svg: SVGElement, view: ViewName, leftHanded: boolean): void {
  const legs = view === 'faceOn' ? [-0.13, 0.13] : [-0.03, 0.05];
  for (const x of legs) {
    const leg = part(svg, 'polyline', 'leg');
    setLine(leg, [
      { x: x * 0.8, y: 0 },
      { x: x * 1.3, y: FLOOR_Y },
    ]);
  }
  setLine(part(svg, 'polyline', 'floor'), [
    { x: -0.62, y: FLOOR_Y },
    { x: 0.62, y: FLOOR_Y },
  ]);
  const ball = part(svg, 'circle', 'golf-ball');
  const ahead = leftHanded ? -0.52 : 0.52;
  ball.setAttribute('r', '0.025');
  ball.setAttribute('cx', String(view === 'faceOn' ? 0 : ahead));
  ball.setAttribute('cy', String(FLOOR_Y - 0.03));
}

export class FigureDrawing {
  readonly #view: ViewName;
  readonly #leftHanded: boolean;
  readonly #ghost: Limbs;
  readonly #now: Limbs;
  #drawn: PoseView | null = null;
  #drawnGhost: PoseView | null = null;

  constructor(svg: SVGElement, view: ViewName, leftHanded: boolean) {
    this.#view = view;
    this.#leftHanded = leftHanded;
    svg.replaceChildren();
    ground(svg, view, leftHanded);
    this.#ghost = new Limbs(svg, 'ghost');
    this.#now = new Limbs(svg, 'now');
    this.#ghost.show(null);
    this.#now.show(null);
  }

  draw(practice: PracticeView | null): void {
    if (practice === null) return;
    const shape = (pose: PoseView | null): Figure | null =>
      pose === null ? null : figure(this.#view, this.#leftHanded, pose);
    if (practice.pose !== this.#drawn) this.#now.show(shape(practice.pose));
    if (practice.addressPose !== this.#drawnGhost) this.#ghost.show(shape(practice.addressPose));
    this.#drawn = practice.pose;
    this.#drawnGhost = practice.addressPose;
  }
}
