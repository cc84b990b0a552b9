import { availableParallelism } from 'node:os';
import { defineConfig } from 'vitest/config';

export default defineConfig({
  test: {
    include: ['tests/**/*.test.ts'],
    exclude: ['tests/e2e/**', 'node_modules/**'],
    pool: 'threads',
    // All there are: the one that is left free by default is half of a machine with two.
    maxWorkers: availableParallelism(),
    testTimeout: 30_000,
  },
});
