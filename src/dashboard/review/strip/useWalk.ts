import type { RefObject } from 'preact';
import { useEffect, useRef, useState } from 'preact/hooks';
import { walk } from './walk.ts';

export interface Walk {
  readonly list: RefObject<HTMLOListElement | null>;
  readonly onKeyDown: (event: KeyboardEvent) => void;
  readonly onFocusIn: (event: FocusEvent) => void;
  /** One item of the list takes the tab key; arrows lead to the others. */
  readonly tabIndex: (place: number) => 0 | -1;
}

const itemsOf = (list: HTMLElement | null): HTMLElement[] => [
  ...(list?.querySelectorAll<HTMLElement>('button') ?? []),
];

const ENTERS: readonly string[] = ['ArrowLeft', 'ArrowRight', 'Home', 'End'];

/** Where nothing on the page has the keyboard, an arrow key enters the list at its stop. */
function useEntry(list: RefObject<HTMLElement | null>, wanted: boolean): void {
  useEffect(() => {
    if (!wanted) return undefined;
    const enter = (event: KeyboardEvent): void => {
      if (event.ctrlKey || event.metaKey || event.altKey || !ENTERS.includes(event.key)) return;
      if (!(event.target instanceof Element) || !event.target.matches('body, main')) return;
      const stop = itemsOf(list.current).find((item) => item.tabIndex === 0);
      if (stop === undefined) return;
      event.preventDefault();
      stop.focus();
    };
    addEventListener('keydown', enter);
    return () => removeEventListener('keydown', enter);
  }, [wanted]);
}

/**
 * A list of buttons that is one stop for the tab key and is walked with arrows.
 * @param enters arrow keys lead into it from anywhere on the page
 */
export function useWalk(count: number, enters = false): Walk {
  const list = useRef<HTMLOListElement>(null);
  useEntry(list, enters);
  const [at, setAt] = useState(0);
  const stop = Math.min(at, count - 1);
  const onKeyDown = (event: KeyboardEvent): void => {
    if (event.ctrlKey || event.metaKey || event.altKey) return;
    const items = itemsOf(list.current);
    const spots = items.map((item) => item.getBoundingClientRect());
    const to = walk(event.key, items.indexOf(event.target as HTMLElement), spots);
    if (to === null) return;
    event.preventDefault();
    items[to]?.focus();
  };
  const onFocusIn = ({ target }: FocusEvent): void => {
    const place = itemsOf(list.current).indexOf(target as HTMLElement);
    if (place >= 0) setAt(place);
  };
  return { list, onKeyDown, onFocusIn, tabIndex: (place) => (place === stop ? 0 : -1) };
}
