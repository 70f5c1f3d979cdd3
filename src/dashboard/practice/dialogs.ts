import { useEffect, useState } from 'preact/hooks';

/** The question that is open on the practice screen. */
export type OpenDialog =
  | { readonly kind: 'pain' }
  | { readonly kind: 'end' }
  | { readonly kind: 'correct'; readonly index: number }
  | null;

let open: OpenDialog = null;
const listeners = new Set<() => void>();

export const openDialog = (): OpenDialog => open;

export function showDialog(dialog: OpenDialog): void {
  open = dialog;
  listeners.forEach((listener) => listener());
}

export function useDialog(): OpenDialog {
  const [value, setValue] = useState(open);
  useEffect(() => {
    const take = (): void => setValue(open);
    listeners.add(take);
    return () => void listeners.delete(take);
  }, []);
  return value;
}
