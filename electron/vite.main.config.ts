import { resolve } from 'node:path';
import { defineConfig } from 'vite';

const root = resolve(import.meta.dirname, '..');

/**
 * Electron's side: `vite build --config electron/vite.main.config.ts`, and once more with `--mode preload`. The
 * threads that copy a shop and that make statements are files of their own beside main.js, where run-copy.ts and runs.ts look
 * for them; so everything lies in one folder.
 */
export default defineConfig(({ mode }) => {
  const isPreload = mode === 'preload';
  return {
    root,
    ssr: { noExternal: true },
    build: {
      ssr: true,
      outDir: 'dist/desktop',
      emptyOutDir: !isPreload,
      target: 'node24',
      rollupOptions: {
        external: ['electron', 'better-sqlite3'],
        input: isPreload
          ? { preload: resolve(root, 'electron/preload.ts') }
          : {
              main: resolve(root, 'electron/main.ts'),
              'copy-thread': resolve(root, 'db/file/copy-thread.ts'),
              'statement-thread': resolve(root, 'db/books/statement-thread.ts'),
            },
        output: isPreload
          ? { format: 'cjs', entryFileNames: '[name].cjs' }
          : { format: 'es', entryFileNames: '[name].js', chunkFileNames: '[name]-[hash].js' },
      },
    },
  };
});
