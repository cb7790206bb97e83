import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vitest/config';

export default defineConfig({
  root: fileURLToPath(new URL('../..', import.meta.url)),
  test: {
    include: ['tests/browser/**/*.test.ts'],
    globalSetup: ['tests/browser/global-setup.ts'],
    environment: 'node',
    pool: 'forks',
    fileParallelism: false, // two pages at once on two cores only make the waits longer
    testTimeout: 30_000,
    hookTimeout: 60_000,
    expect: { poll: { timeout: 10_000 } }, // a busy machine needs more than the usual second; a right page answers at once
  },
});
