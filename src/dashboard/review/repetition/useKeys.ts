import { useEffect, useRef } from 'preact/hooks';

interface Keys {
  readonly previous: () => void;
  readonly next: () => void;
  readonly back: () => void;
}

/** The control that has the focus has these keys for itself. */
const isTaken = ({ target }: KeyboardEvent): boolean =>
  target instanceof Element &&
  target.closest('input, select, textarea, dialog, [role="region"], details[open].menu') !== null;

/** Left and right go to the neighbours, Escape goes back. */
export function useKeys(keys: Keys): void {
  const now = useRef(keys);
  now.current = keys;
  useEffect(() => {
    const press = (event: KeyboardEvent): void => {
      if (event.defaultPrevented || event.ctrlKey || event.metaKey || event.altKey) return;
      if (event.key === 'Escape') now.current.back();
      if (isTaken(event)) return;
      if (event.key === 'ArrowLeft') now.current.previous();
      if (event.key === 'ArrowRight') now.current.next();
    };
    addEventListener('keydown', press);
    return () => removeEventListener('keydown', press);
  }, []);
}
