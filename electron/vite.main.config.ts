import { resolve } from 'node:path';
import { defineConfig } from 'vite';

/** Electron's side: `vite build --config electron/vite.main.config.ts`, and once more with `--mode preload`. */
export default defineConfig(({ mode }) => {
  const isPreload = mode === 'preload';
  return {
    root: resolve(import.meta.dirname, '..'),
    ssr: { noExternal: true },
    build: {
      ssr: resolve(import.meta.dirname, isPreload ? 'preload.ts' : 'main.ts'),
      outDir: 'dist/desktop',
      emptyOutDir: !isPreload,
      target: 'node24',
      rollupOptions: {
        external: ['electron', 'better-sqlite3'],
        output: isPreload
          ? { format: 'cjs', entryFileNames: 'preload.cjs' }
          : { format: 'es', entryFileNames: 'main.js' },
      },
    },
  };
});
