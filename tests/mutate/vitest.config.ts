import { defineConfig } from 'vitest/config';

/** `npm run mutate`: the campaign is one test without a time limit. */
export default defineConfig({
  test: { include: ['tests/mutate/campaign.ts'], pool: 'forks', maxWorkers: 1, testTimeout: 0, hookTimeout: 0 },
});
