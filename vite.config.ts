import { defineConfig } from 'vite';

export default defineConfig({
  root: 'src/dashboard',
  build: { outDir: '../../dist/dashboard', emptyOutDir: true },
  oxc: { jsx: { runtime: 'automatic', importSource: 'preact' } },
});
