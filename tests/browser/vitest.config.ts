import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vitest/config';

/** STILLSPOT_SLOW=5 slows every page so many times (`harness.ts`). A limit only ends what is waited for in vain, and comes so many times later then. */
const slow = Number(process.env.STILLSPOT_SLOW ?? 1);

export default defineConfig({
  root: fileURLToPath(new URL('../..', import.meta.url)),
  test: {
    include: ['tests/browser/**/*.test.ts'],
    globalSetup: ['tests/browser/global-setup.ts'],
    environment: 'node',
    pool: 'forks',
    isolate: false, // no file changes what the helpers hold: one process reads them once, not forty
    setupFiles: ['tests/browser/each-file.ts'],
    fileParallelism: false, // two pages at once on two cores only make the waits longer
    testTimeout: 30_000 * slow,
    hookTimeout: 60_000 * slow,
    expect: { poll: { timeout: 10_000 * slow } }, // a busy machine needs more than the usual second; a right page answers at once
  },
});
