// Tries mutants of the engine's verdicts: npm run mutate -- [COUNT] [SEED] [PART OF A PATH]. Each is one change of the code that a test
// should notice; 400 by default, chosen by the seed. Survivors are listed in tests/mutate/SURVIVORS.md. npm run mutate -- again
// tries the survivors of the last run again.
import { spawn } from 'node:child_process';
import { appendFileSync, existsSync, mkdtempSync, readFileSync, rmSync, statSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { ensureDeps, ROOT, runPlainly } from './ensure-deps.mjs';
import { lastRun, withAgain, writeKeys, writeSurvivors } from './mutate-survivors.mjs';

/** A mutant that takes longer, ms, does not end, and counts as noticed. */
const MOST_MS = 120_000;

/** Runs the campaign until it ends or hangs. @returns {Promise<number | null>} its exit code; null when it hung */
function campaign(/** @type {string} */ folder, /** @type {Record<string, string>} */ env) {
  const now = join(folder, 'now.json');
  return new Promise((done) => {
    const args = ['node_modules/vitest/vitest.mjs', 'run', '--config', 'tests/mutate/vitest.config.ts'];
    const child = spawn(process.execPath, args, {
      cwd: ROOT,
      stdio: 'inherit',
      env: { ...process.env, ...env },
      detached: true,
    });
    const watch = setInterval(() => {
      if (!existsSync(now) || Date.now() - statSync(now).mtimeMs < MOST_MS) return;
      clearInterval(watch);
      process.kill(-(child.pid ?? 0), 'SIGKILL');
      appendFileSync(
        join(folder, 'results.jsonl'),
        `${JSON.stringify({ ...JSON.parse(readFileSync(now, 'utf8')), state: 'hung' })}\n`,
      );
      rmSync(now);
      child.once('close', () => done(null));
    }, 2000);
    child.once('close', (code) => {
      clearInterval(watch);
      done(code);
    });
  });
}

await runPlainly(async () => {
  ensureDeps();
  const [count = '400', seed = '1', only = ''] = process.argv.slice(2);
  const last = count === 'again' ? lastRun() : null;
  const folder = mkdtempSync(join(tmpdir(), 'stillspot-mutate-'));
  try {
    const keys = last ? join(folder, 'keys.json') : '';
    if (last) writeKeys(keys, last.results);
    const env = { MUTATE_COUNT: count, MUTATE_SEED: seed, MUTATE_ONLY: only, MUTATE_KEYS: keys, MUTATE_FOLDER: folder };
    let code = null;
    while (code === null) code = await campaign(folder, env);
    const results = readFileSync(join(folder, 'results.jsonl'), 'utf8')
      .split('\n')
      .filter(Boolean)
      .map((line) => JSON.parse(line));
    const tally = last
      ? writeSurvivors(withAgain(last.results, results), last)
      : writeSurvivors(results, { seed, whole: only === '' });
    process.stdout.write(`${tally}\n`);
    process.exitCode = code;
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
});
