import { readFileSync } from 'node:fs';
import { type Plugin, defineConfig } from 'vite';

const TYPEFACE = 'atkinson-hyperlegible-next';

/** Asks for the typeface as soon as the page comes, before its style sheet; its licence goes where it goes. */
const typeface = (): Plugin => ({
  name: 'typeface',
  generateBundle() {
    const licence = new URL(
      `node_modules/@fontsource-variable/${TYPEFACE}/LICENSE`,
      import.meta.url,
    );
    this.emitFile({
      type: 'asset',
      fileName: `assets/${TYPEFACE}-LICENSE.txt`,
      source: readFileSync(licence, 'utf8'),
    });
  },
  transformIndexHtml: (_html, { bundle = {} }) =>
    Object.keys(bundle)
      .filter((file) => file.includes(`${TYPEFACE}-latin-wght`))
      .map((file) => ({
        tag: 'link',
        attrs: {
          rel: 'preload',
          href: `/${file}`,
          as: 'font',
          type: 'font/woff2',
          crossorigin: true,
        },
      })),
});

export default defineConfig({
  root: 'src/dashboard',
  plugins: [typeface()],
  build: {
    outDir: '../../dist/dashboard',
    emptyOutDir: true,
    // The second screen is served by its list of files.
    manifest: true,
    // Three pages: the practice's, the hub's and the second screen's.
    rollupOptions: {
      input: ['src/dashboard/index.html', 'src/dashboard/hub.html', 'src/dashboard/watch.html'],
    },
  },
  oxc: { jsx: { runtime: 'automatic', importSource: 'preact' } },
});
