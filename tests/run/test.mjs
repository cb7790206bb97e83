// Runs every check, in stages that do not stop one another, and ends with the line "N passed, N failed".
// `npm test -- unit browser` runs only the named stages.
import { spawnSync } from 'node:child_process';
import { existsSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { ensureDeps, ROOT, runPlainly } from './ensure-deps.mjs';
import { findBrowser } from './find-browser.mjs';
import { FAILED, inWords, PASSED, sum, tallyOf } from './tally.mjs';

/** @typedef {import('./tally.mjs').Tally} Tally */

/** Reports and the built site go to a folder of this run alone: two runs of one tree do not disturb each other. */
const scratch = mkdtempSync(join(tmpdir(), 'stillspot-test-'));
const site = join(scratch, 'site');

const binary = (/** @type {string[]} */ ...path) => join(ROOT, 'node_modules', ...path);
const TSC = binary('typescript', 'bin', 'tsc');
const BIOME = binary('@biomejs', 'biome', 'bin', 'biome');
const KNIP = binary('knip', 'bin', 'knip.js');
const VITE = binary('vite', 'bin', 'vite.js');
const VITEST = binary('vitest', 'vitest.mjs');

/** The linter colors what goes to a file as well, unless told. */
const inColor = Boolean(process.stdout.isTTY) && !process.env.NO_COLOR;

/** Exit code 0 or not. NODE_ENV is left out: it would turn the build into a development one. */
function runs(
  /** @type {string} */ program,
  /** @type {string[]} */ args,
  /** @type {Record<string, string>} */ env = {},
) {
  const { NODE_ENV: _, ...rest } = process.env;
  /** @type {import('node:child_process').SpawnSyncOptions} */
  const options = { cwd: ROOT, env: { ...rest, ...env }, stdio: ['ignore', 'inherit', 'inherit'] };
  return spawnSync(process.execPath, [program, ...args], options).status === 0;
}

const check = (/** @type {string} */ program, /** @type {string[]} */ ...args) =>
  runs(program, args) ? PASSED : FAILED;

function vitest(
  /** @type {string} */ name,
  /** @type {string} */ config,
  /** @type {Record<string, string>} */ env = {},
) {
  const reportFile = join(scratch, `${name}.json`);
  const args = ['run', '--config', config, '--reporter=default', '--reporter=json', `--outputFile.json=${reportFile}`];
  return tallyOf(runs(VITEST, args, env), reportFile);
}

const buildTo = (/** @type {string} */ folder, /** @type {string} */ mode) =>
  check(VITE, 'build', '--outDir', folder, '--emptyOutDir', '--logLevel', 'warn', '--mode', mode);

/** The app as users get it, and with the hook that the browser tests need. */
const build = () => [buildTo(join(scratch, 'users'), 'production'), buildTo(site, 'test-hook')];

function browser() {
  try {
    const path = findBrowser();
    /** @type {Record<string, string>} */
    const env = { BROWSER_PATH: path };
    if (existsSync(join(site, 'index.html'))) env.STILLSPOT_SITE = site; // else the browser stage builds for itself
    return vitest('browser', 'tests/browser/vitest.config.ts', env);
  } catch (error) {
    process.stdout.write(`The browser tests did not run. ${error instanceof Error ? error.message : error}\n`);
    return FAILED;
  }
}

/** @type {Record<string, () => Tally | Tally[]>} */
const STAGES = {
  types: () => [check(TSC, '-p', 'tsconfig.json'), check(TSC, '-p', 'geometry/tsconfig.json')],
  lint: () => check(BIOME, 'ci', ...(inColor ? [] : ['--colors=off']), '.'),
  unused: () => check(KNIP),
  unit: () => vitest('unit', 'vite.config.ts'),
  build,
  browser,
};

function wantedStages() {
  const names = process.argv.slice(2);
  const unknown = names.filter((name) => !(name in STAGES));
  if (unknown.length > 0)
    throw new Error(`There is no stage "${unknown.join('", "')}". Stages: ${Object.keys(STAGES).join(', ')}.`);
  return Object.entries(STAGES).filter(([name]) => names.length === 0 || names.includes(name));
}

function main() {
  const stages = wantedStages();
  ensureDeps();
  const results = stages.map(([name, stage]) => {
    process.stdout.write(`\n== ${name} ==\n`);
    const startedAt = performance.now();
    const tally = sum([stage()].flat());
    return { name, tally, seconds: (performance.now() - startedAt) / 1000 };
  });
  process.stdout.write('\n');
  for (const { name, tally, seconds } of results)
    process.stdout.write(`${name.padEnd(8)} ${seconds.toFixed(1).padStart(6)} s  ${inWords(tally)}\n`);
  const total = sum(results.map(({ tally }) => tally));
  process.stdout.write(`\n${inWords(total)}\n`);
  process.exitCode = total.failed > 0 ? 1 : 0;
}

try {
  await runPlainly(main);
} finally {
  rmSync(scratch, { recursive: true, force: true });
}
