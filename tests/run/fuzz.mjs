// Mutates samples and jobs and runs the engine, the commands and the papers on them: npm run fuzz -- [SECONDS] [SEED] [COUNT]. Ten
// minutes by default, each run with other seeds; the first seed is printed, and reproduces the files.
import { spawnSync } from 'node:child_process';
import { join } from 'node:path';
import { withBundle } from './bundle.mjs';
import { ensureDeps, ROOT, runPlainly } from './ensure-deps.mjs';

const TEN_MINUTES = '600';

await runPlainly(async () => {
  ensureDeps();
  const [seconds = TEN_MINUTES, seed = String(Date.now() % 1_000_000_000), count = 'Infinity'] = process.argv.slice(2);
  process.stdout.write(`Fuzzing for ${seconds} s from seed ${seed}.\n`);
  await withBundle('fuzz', { fuzz: 'tests/fuzz/main.ts' }, async (folder) => {
    const args = ['--expose-gc', join(folder, 'fuzz.mjs'), seconds, seed, count];
    process.exitCode = spawnSync(process.execPath, args, { cwd: ROOT, stdio: 'inherit' }).status ?? 1;
  });
});
