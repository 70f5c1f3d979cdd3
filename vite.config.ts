import { defineConfig } from 'vite';

export default defineConfig({
  root: 'src/dashboard',
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
