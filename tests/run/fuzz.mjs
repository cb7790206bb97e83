// Mutates the samples and sends them through the engine and the commands: npm run fuzz -- [SECONDS] [SEED]. Ten minutes by default, each run
// with other seeds; the first one is printed, and gives the same files again.
import { spawnSync } from 'node:child_process';
import { ensureDeps, ROOT, runPlainly } from './ensure-deps.mjs';

const TEN_MINUTES = '600';

await runPlainly(async () => {
  ensureDeps();
  const [seconds = TEN_MINUTES, seed = String(Date.now() % 1_000_000_000)] = process.argv.slice(2);
  process.stdout.write(`Fuzzing for ${seconds} s from seed ${seed}.\n`);
  const { status } = spawnSync(
    process.execPath,
    ['node_modules/vitest/vitest.mjs', 'run', 'tests/fuzz', '--testTimeout=0'],
    {
      cwd: ROOT,
      stdio: 'inherit',
      env: { ...process.env, FUZZ_SECONDS: seconds, FUZZ_SEED: seed },
    },
  );
  process.exitCode = status ?? 1;
});
