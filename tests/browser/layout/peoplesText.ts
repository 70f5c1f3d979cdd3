import type { Page } from 'playwright-core';

const WORD = 'שלום';
/** One word of so many letters, as somebody might paste it. */
export const longWord = (letters: number): string =>
  WORD.repeat(Math.ceil(letters / WORD.length)).slice(0, letters);

/** Runs in the page: people's text there is all in Hebrew, and nothing else is. */
function lookInPage(): { readonly found: string[]; readonly texts: number } {
  const HEBREW = /[\u0590-\u05ff]/;
  const ISOLATED = /\u2068[^\u2069]*(\u2069|$)/g;
  const found: string[] = [];
  let texts = 0;
  const root = document.documentElement;
  if (root.scrollWidth > innerWidth) found.push(`the page is ${root.scrollWidth} px wide`);

  /** It is alone in an element that takes its direction from it. */
  const standsAlone = (of: Element): boolean => {
    const alone = of.closest('bdi, [dir="auto"]');
    return (
      alone !== null &&
      HEBREW.test(
        (alone.textContent ?? '')
          .trim()
          .replace(/^[\u2068“„"]+/, '')
          .charAt(0),
      )
    );
  };
  const mayScroll = (of: Element): boolean => {
    for (let at: Element | null = of; at && at !== document.body; at = at.parentElement)
      if (getComputedStyle(at).overflowX !== 'visible') return true;
    return false;
  };
  const walker = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
  for (let node = walker.nextNode(); node !== null; node = walker.nextNode()) {
    const of = node.parentElement;
    const text = node.textContent ?? '';
    if (of === null || !HEBREW.test(text)) continue;
    texts++;
    const name = `${of.tagName.toLowerCase()}.${of.className} “${text.slice(0, 30)}”`;
    if (
      HEBREW.test(text.replace(ISOLATED, '')) &&
      !standsAlone(of) &&
      of.closest('textarea') === null
    )
      found.push(`not isolated: ${name}`);
    if (!of.checkVisibility() || of.closest('option, .hidden') !== null || mayScroll(of)) continue;
    const range = document.createRange();
    range.selectNodeContents(node);
    for (const { left, right } of range.getClientRects())
      if (left < -1 || right > innerWidth + 1) found.push(`from ${left} to ${right} px: ${name}`);
  }
  for (const field of document.querySelectorAll('textarea, input')) {
    if (!(field instanceof HTMLInputElement || field instanceof HTMLTextAreaElement)) continue;
    if (!HEBREW.test(field.value)) continue;
    texts++;
    if (!field.matches(':dir(rtl)'))
      found.push(`left to right: field “${field.value.slice(0, 30)}”`);
  }
  for (const of of document.querySelectorAll('[title], [aria-label]'))
    for (const key of ['title', 'aria-label']) {
      const text = of.getAttribute(key) ?? '';
      if (/^[^\u0590-\u05ff]*[a-z]/i.test(text) && HEBREW.test(text.replace(ISOLATED, '')))
        found.push(`not isolated: ${key} “${text.slice(0, 40)}”`);
    }
  return { found: [...new Set(found)], texts };
}

/** Where people's text widens the page or turns what is around it, and how many such texts there are. */
export const peoplesText = (page: Page) => page.evaluate(lookInPage);
