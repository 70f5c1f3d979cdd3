import type { Page } from 'playwright-core';
import { TYPEFACES, type Typeface } from './typefaces.ts';

export interface LookRules {
  /** Everything stands in the window: nothing scrolls down. */
  readonly whole?: boolean;
  /** What may be scrolled all the same, as a selector. */
  readonly mayScroll?: string;
}

/** Runs in the page, so it brings all that it needs along. */
async function lookInPage(asked: {
  readonly typefaces: readonly Typeface[];
  readonly rules: LookRules;
}): Promise<string[]> {
  const { whole = false, mayScroll = '' } = asked.rules;
  const root = document.scrollingElement as HTMLElement;
  const found: string[] = [];
  /** A name that the student chose ends with dots; a term and old repetitions are left out by design. */
  const FREE = '.own-name, .measure-name small, .strip, .skip:not(:focus)';

  interface Piece {
    readonly text: string;
    readonly of: Element;
    readonly box: DOMRect;
  }
  interface Room {
    left: number;
    right: number;
    top: number;
    bottom: number;
  }

  const isSeen = (element: Element): boolean => {
    if (!element.checkVisibility({ visibilityProperty: true, opacityProperty: true })) return false;
    for (let at: Element | null = element; at !== null; at = at.parentElement)
      if (getComputedStyle(at).clipPath !== 'none') return false;
    return true;
  };

  /** A line's box is higher than its letters. */
  const ofLetters = (box: DOMRect): DOMRect =>
    new DOMRect(box.x, box.y + box.height * 0.25, box.width, box.height * 0.5);

  const pieces = (): Piece[] => {
    const walker = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
    const all: Piece[] = [];
    for (let node = walker.nextNode(); node !== null; node = walker.nextNode()) {
      const of = node.parentElement;
      const text = node.textContent?.trim() ?? '';
      if (text === '' || of === null || !isSeen(of)) continue;
      const range = document.createRange();
      range.selectNodeContents(node);
      for (const box of range.getClientRects())
        if (box.width > 0) all.push({ text: text.slice(0, 40), of, box: ofLetters(box) });
    }
    return all;
  };

  /** Where something may be seen: within all that cuts it off. What can be scrolled to counts as seen where that is allowed. */
  const roomOf = (element: Element): Room => {
    const room = { left: 0, right: innerWidth, top: -1e6, bottom: whole ? innerHeight : 1e6 };
    for (let at: Element | null = element; at && at !== document.body; at = at.parentElement) {
      const { overflowX, overflowY, position } = getComputedStyle(at);
      if (at.matches(FREE)) return { left: -1e6, right: 1e6, top: -1e6, bottom: 1e6 };
      const scrolls = !whole || (mayScroll !== '' && at.matches(mayScroll));
      const box = at.getBoundingClientRect();
      const isScroller = (how: string): boolean => how === 'auto' || how === 'scroll';
      if (isScroller(overflowX) && scrolls && at.scrollWidth > at.clientWidth)
        return { left: -1e6, right: 1e6, top: -1e6, bottom: 1e6 };
      if (isScroller(overflowY) && scrolls && at.scrollHeight > at.clientHeight) {
        room.top = -1e6;
        room.bottom = 1e6;
        return room;
      }
      if (overflowX !== 'visible') {
        room.left = Math.max(room.left, box.left);
        room.right = Math.min(room.right, box.right);
      }
      if (overflowY !== 'visible') {
        room.top = Math.max(room.top, box.top);
        room.bottom = Math.min(room.bottom, box.bottom);
      }
      if (position === 'fixed') break;
    }
    return room;
  };

  const say = (of: Element): string =>
    `${of.tagName.toLowerCase()}${of.classList.length > 0 ? `.${[...of.classList].join('.')}` : ''}`;

  const overBy = ({ of, box }: Piece): number => {
    const room = roomOf(of);
    return Math.max(
      room.left - box.left,
      box.right - room.right,
      room.top - box.top,
      box.bottom - room.bottom,
    );
  };

  /** Neither scrolled out of its place just now nor wrapped out of it. */
  const isInSight = ({ of, box }: Piece): boolean => {
    for (let at: Element | null = of; at && at !== document.body; at = at.parentElement) {
      const { overflowY, position } = getComputedStyle(at);
      const place = at.getBoundingClientRect();
      if (overflowY !== 'visible' && (box.bottom > place.bottom || box.top < place.top))
        return false;
      if (position === 'fixed') break;
    }
    return true;
  };

  const meet = (a: DOMRect, b: DOMRect): boolean =>
    Math.min(a.right, b.right) - Math.max(a.left, b.left) > 1.5 &&
    Math.min(a.bottom, b.bottom) - Math.max(a.top, b.top) > 1.5;

  const layer = (element: Element): Element | null =>
    element.closest('dialog, .menu-body, .desk-error, .skip');

  const overEachOther = (all: readonly Piece[]): string[] => {
    const sorted = [...all].sort((a, b) => a.box.top - b.box.top);
    return sorted.flatMap((one, i) => {
      const met: string[] = [];
      for (const other of sorted.slice(i + 1)) {
        if (other.box.top > one.box.bottom) break;
        const apart = one.of === other.of || layer(one.of) !== layer(other.of);
        if (!apart && meet(one.box, other.box))
          met.push(`"${one.text}" (${say(one.of)}) and "${other.text}" (${say(other.of)}) meet`);
      }
      return met;
    });
  };

  /** No letter stands on them. */
  const meters = (): Piece[] =>
    [...document.querySelectorAll('[role="meter"]')]
      .filter(isSeen)
      .map((of) => ({ text: of.ariaLabel ?? '', of, box: of.getBoundingClientRect() }));

  const controls = (): Piece[] =>
    [...document.querySelectorAll('a, button, summary, input, select, textarea')]
      .filter((of) => isSeen(of) && of.closest('svg, .skip') === null)
      .flatMap((of) =>
        [...of.getClientRects()].map((box) => ({ text: of.textContent.trim(), of, box })),
      );

  const apart = (all: readonly Piece[]): Piece[] =>
    all.filter(({ of }) => !all.some((other) => other.of !== of && other.of.contains(of)));

  for (const { name, css } of asked.typefaces) {
    document.adoptedStyleSheets[0]?.replaceSync(css);
    for (let frame = 0; frame < 3; frame++)
      await new Promise((resolve) => requestAnimationFrame(resolve));
    const cut: Piece[] = [];
    const seen: Piece[] = [];
    for (const piece of pieces()) {
      if (overBy(piece) > 1.5) cut.push(piece);
      else if (isInSight(piece)) seen.push(piece);
    }
    const some = cut.map(
      (piece) => `"${piece.text}" (${say(piece.of)}) is cut by ${Math.round(overBy(piece))} px`,
    );
    seen.push(...meters().filter(isInSight));
    some.push(...overEachOther(seen), ...overEachOther(apart(controls()).filter(isInSight)));
    if (root.scrollWidth > innerWidth) some.push(`the page is ${root.scrollWidth} px wide`);
    const bar = document.querySelector('.top')?.getBoundingClientRect().height ?? 0;
    if (bar > 64) some.push(`the bar is ${Math.round(bar)} px high`);
    if (whole && root.scrollHeight > innerHeight)
      some.push(`the page is ${root.scrollHeight} px high`);
    found.push(...[...new Set(some)].map((one) => `${name}: ${one}`));
  }
  document.adoptedStyleSheets[0]?.replaceSync('');
  return found;
}

/** All that is cut, stands over something else or makes the page scroll sideways, in every typeface. */
export const findings = (page: Page, rules: LookRules = {}): Promise<string[]> =>
  page.evaluate(lookInPage, { typefaces: TYPEFACES, rules });
