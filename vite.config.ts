import { defineConfig } from 'vite';

/** The window: relative paths, so that it opens from app:// and from http alike; every font is a file of its own, since the content policy takes no data: fonts. */
export default defineConfig({
  root: 'renderer',
  base: './',
  build: {
    outDir: '../dist/renderer',
    emptyOutDir: true,
    target: 'es2024',
    assetsInlineLimit: 0,
    modulePreload: { polyfill: false },
  },
});
