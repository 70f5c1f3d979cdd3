import type { PoseView } from '../../streaming/contract.ts';
import { type Hands, ballAt, skeletonOf } from './figure.ts';
import { type Part, ghostOf, partsOf } from './parts.ts';
import type { ViewName } from './project.ts';
import { GROUND, ballPath } from './scene.ts';

const SVG = 'http://www.w3.org/2000/svg';

function make(parent: SVGElement, tag: string, name: string): SVGElement {
  const element = document.createElementNS(SVG, tag);
  element.setAttribute('class', name);
  parent.append(element);
  return element;
}

/** One figure's elements, made once and moved each frame: no tree is compared. */
class Outlines {
  readonly #group: SVGElement;
  readonly #paths = new Map<string, { readonly element: SVGElement; path: string }>();
  #order = '';

  constructor(svg: SVGElement, name: string) {
    this.#group = make(svg, 'g', name);
  }

  /** Far parts first; put in order again only where the order is another one. */
  show(parts: readonly Part[]): void {
    const elements = parts.map((part) => this.#set(part));
    const order = parts.map(({ name }) => name).join();
    if (order !== this.#order) this.#group.replaceChildren(...elements);
    this.#order = order;
  }

  #set({ name, measured, path }: Part): SVGElement {
    let known = this.#paths.get(name);
    if (known === undefined) {
      const element = make(this.#group, 'path', `${measured ? 'measured' : 'drawn'} ${name}`);
      this.#paths.set(name, (known = { element, path: '' }));
    }
    if (known.path !== path) known.element.setAttribute('d', path);
    known.path = path;
    return known.element;
  }
}

/** A figure that moves, with ground and ball. */
export class FigureDrawing {
  readonly #view: ViewName;
  readonly #leftHanded: boolean;
  readonly #ball: SVGElement;
  readonly #ghost: Outlines;
  readonly #now: Outlines;
  #address: PoseView | null | undefined;

  constructor(svg: SVGElement, view: ViewName, leftHanded: boolean) {
    this.#view = view;
    this.#leftHanded = leftHanded;
    svg.replaceChildren();
    make(svg, 'path', 'ground').setAttribute('d', GROUND);
    this.#ball = make(svg, 'path', 'golf-ball');
    this.#ghost = new Outlines(svg, 'ghost');
    this.#now = new Outlines(svg, 'now');
  }

  /** @param address where the ball lies; with `ghost` it is drawn dashed too */
  draw(pose: PoseView | null, hands: Hands, address: PoseView | null, ghost = true): void {
    const [view, left] = [this.#view, this.#leftHanded];
    const ball = ballAt(address);
    this.#now.show(pose === null ? [] : partsOf(skeletonOf(pose, hands, ball), view, left));
    if (address === this.#address) return;
    this.#address = address;
    this.#ball.setAttribute('d', ballPath(view, left, ball));
    const standing = ghost && address !== null ? skeletonOf(address, { do: 'hold' }, ball) : null;
    this.#ghost.show(standing === null ? [] : ghostOf(standing, view, left));
  }
}
