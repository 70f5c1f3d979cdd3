const opened = (): NodeListOf<HTMLDetailsElement> =>
  document.querySelectorAll<HTMLDetailsElement>('details.menu[open]');

function closeByKey(): void {
  for (const menu of opened()) {
    menu.open = false;
    menu.querySelector('summary')?.focus();
  }
}

function closeBut(target: EventTarget | null): void {
  for (const menu of opened())
    if (!(target instanceof Node && menu.contains(target))) menu.open = false;
}

/** An open menu closes by Escape, by a press beside it and where the page changes. */
export function followMenus(): void {
  addEventListener('keydown', ({ key }) => {
    if (key === 'Escape') closeByKey();
  });
  addEventListener('pointerdown', ({ target }) => closeBut(target));
  addEventListener('hashchange', () => closeBut(null));
}
