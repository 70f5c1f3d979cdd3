import { defineConfig } from 'vite';

export default defineConfig({
  root: 'src/dashboard',
  build: {
    outDir: '../../dist/dashboard',
    emptyOutDir: true,
    // Two pages: the practice's and the hub's.
    rollupOptions: { input: ['src/dashboard/index.html', 'src/dashboard/hub.html'] },
  },
  oxc: { jsx: { runtime: 'automatic', importSource: 'preact' } },
});
