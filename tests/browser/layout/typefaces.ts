import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import type { Page } from 'playwright-core';

/** What a page is set in while it is looked at. */
export interface Typeface {
  readonly name: string;
  /** Style sheet that sets it. */
  readonly css: string;
}

interface FontFile {
  readonly family: string;
  readonly weight: string;
  readonly base64: string;
}

const { resolve } = createRequire(import.meta.url);
const file = (family: string, weight: string, path: string): FontFile => ({
  family,
  weight,
  base64: readFileSync(resolve(path)).toString('base64'),
});

const SHIPPED = '@fontsource-variable/atkinson-hyperlegible-next/files/atkinson-hyperlegible-next';
const DEJAVU = '@fontsource/dejavu-sans/files/dejavu-sans-latin';

/** From packages, so that every machine looks at the same letters. Arimo is as wide as Liberation Sans and Arial. */
const FILES: readonly FontFile[] = [
  file('the shipped one', '200 800', `${SHIPPED}-latin-wght-normal.woff2`),
  file('DejaVu', '400', `${DEJAVU}-400-normal.woff2`),
  file('DejaVu', '700', `${DEJAVU}-700-normal.woff2`),
  file('Arimo', '400 700', '@fontsource-variable/arimo/files/arimo-latin-wght-normal.woff2'),
];

const set = (family: string): string => `:root { --type: '${family}', sans-serif !important; }`;

/** Mean letters are half an em wide: 0.075 em more are 15 %. */
const WIDER = '* { letter-spacing: 0.075em !important; }';

export const TYPEFACES: readonly Typeface[] = [
  { name: 'the shipped one', css: set('the shipped one') },
  { name: 'DejaVu', css: set('DejaVu') },
  { name: 'Arimo', css: set('Arimo') },
  { name: '15 % wider', css: `${set('the shipped one')} ${WIDER}` },
];

/** Makes the typefaces known to a page; to be done again after each load. */
export const installTypefaces = (page: Page): Promise<void> =>
  page.evaluate(async (files) => {
    const faces = files.map(({ family, weight, base64 }) => {
      const bytes = Uint8Array.from(atob(base64), (letter) => letter.charCodeAt(0));
      return new FontFace(family, bytes, { weight });
    });
    for (const face of faces) document.fonts.add(await face.load());
    document.adoptedStyleSheets = [new CSSStyleSheet()];
  }, FILES);

export const setTypeface = (page: Page, { css }: Typeface): Promise<void> =>
  page.evaluate((sheet) => document.adoptedStyleSheets[0]?.replaceSync(sheet), css);
