import { useEffect, useRef } from 'preact/hooks';
import { currentPrefs } from '../../shell/prefs.ts';

export type KeyMap = Readonly<Record<string, () => void>>;

/** A key pressed while the person writes is not ours. */
const isTyping = ({ target }: KeyboardEvent): boolean =>
  target instanceof HTMLElement && /^(INPUT|TEXTAREA|SELECT)$/.test(target.tagName);

/** Single keys of a page, by `event.key`; they can be switched off. */
export function useKeys(keys: KeyMap): void {
  const latest = useRef(keys);
  latest.current = keys;
  useEffect(() => {
    const press = (event: KeyboardEvent): void => {
      if (event.ctrlKey || event.metaKey || event.altKey || event.defaultPrevented) return;
      if (isTyping(event) || !currentPrefs().singleKeys) return;
      if (document.querySelector('dialog[open]') !== null) return;
      const act = latest.current[event.key];
      if (act === undefined) return;
      event.preventDefault();
      act();
    };
    addEventListener('keydown', press);
    return () => removeEventListener('keydown', press);
  }, []);
}
