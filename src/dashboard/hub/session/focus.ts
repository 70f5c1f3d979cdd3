/** Puts the cursor into the first field that fits, wherever it stands on the page. */
function focusOn(selector: string): void {
  const field = document.querySelector<HTMLElement>(selector);
  field?.scrollIntoView({ block: 'nearest' });
  field?.focus();
}

export const focusComment = (): void => focusOn('.comment-box textarea');
export const focusRelabel = (): void => focusOn('.relabel select');
