// Runs every check and ends with the line "N passed, N failed". `npm test -- unit browser` runs only the named stages.
// The stages of a lane run one after the other, the lanes at the same time; none stops another.
import { spawn } from 'node:child_process';
import { existsSync, mkdtempSync, rmSync } from 'node:fs';
import { availableParallelism, constants, tmpdir } from 'node:os';
import { join } from 'node:path';
import { ensureDeps, ROOT, runPlainly } from './ensure-deps.mjs';
import { findBrowser } from './find-browser.mjs';
import { inTurn, runLanes } from './lanes.mjs';
import { FAILED, inWords, PASSED, sum, tallyOf } from './tally.mjs';

/** @typedef {import('./tally.mjs').Tally} Tally */
/** @typedef {import('./lanes.mjs').Write} Write */

/** Reports and the built site are written to a folder of this run, so that two runs of one tree do not disturb each other. */
const scratch = mkdtempSync(join(tmpdir(), 'stillspot-test-'));
const site = join(scratch, 'site');
/** The app as users get it. */
const users = join(scratch, 'users');

const binary = (/** @type {string[]} */ ...path) => join(ROOT, 'node_modules', ...path);
const TSC = binary('typescript', 'bin', 'tsc');
const BIOME = binary('@biomejs', 'biome', 'bin', 'biome');
const KNIP = binary('knip', 'bin', 'knip.js');
const VITE = binary('vite', 'bin', 'vite.js');
const VITEST = binary('vitest', 'vitest.mjs');

/** The programs write to a pipe, so they are told whether the output is a terminal. */
const inColor = Boolean(process.stdout.isTTY) && !process.env.NO_COLOR;

/** @type {Set<import('node:child_process').ChildProcess>} */
const running = new Set();

/**
 * Runs a program; resolves to whether its exit code is 0. NODE_ENV is left out: it would make the build a development build.
 * @returns {Promise<boolean>}
 */
function runs(
  /** @type {Write} */ write,
  /** @type {string} */ program,
  /** @type {string[]} */ args,
  /** @type {Record<string, string>} */ env = {},
) {
  const { NODE_ENV: _, ...rest } = process.env;
  const color = inColor ? { FORCE_COLOR: '1' } : {};
  return new Promise((done) => {
    const child = spawn(process.execPath, [program, ...args], {
      cwd: ROOT,
      env: { ...rest, ...color, ...env },
      stdio: ['ignore', 'pipe', 'pipe'],
    });
    running.add(child);
    child.stdout.on('data', write);
    child.stderr.on('data', write);
    const end = (/** @type {boolean} */ isWell) => {
      running.delete(child);
      done(isWell);
    };
    child.once('error', (error) => {
      write(`${error.message}\n`);
      end(false);
    });
    child.once('close', (code) => end(code === 0)); // not "exit": a pipe may still hold the last lines
  });
}

const check = async (/** @type {Write} */ write, /** @type {string} */ program, /** @type {string[]} */ ...args) =>
  (await runs(write, program, args)) ? PASSED : FAILED;

async function vitest(
  /** @type {Write} */ write,
  /** @type {string} */ name,
  /** @type {string} */ config,
  /** @type {Record<string, string>} */ env = {},
) {
  const reportFile = join(scratch, `${name}.json`);
  const args = ['run', '--config', config, '--reporter=default', '--reporter=json', `--outputFile.json=${reportFile}`];
  return tallyOf(await runs(write, VITEST, args, env), reportFile);
}

/** Both projects of the compiler. */
const types = async (/** @type {Write} */ write) =>
  sum([await check(write, TSC, '-p', 'tsconfig.json'), await check(write, TSC, '-p', 'geometry/tsconfig.json')]);

const buildTo = (/** @type {Write} */ write, /** @type {string} */ folder, /** @type {string} */ mode) =>
  check(write, VITE, 'build', '--outDir', folder, '--emptyOutDir', '--logLevel', 'warn', '--mode', mode);

/** Builds the app as users get it, and with the hook that the browser tests need. */
const build = async (/** @type {Write} */ write) =>
  sum([await buildTo(write, users, 'production'), await buildTo(write, site, 'test-hook')]);

async function browser(/** @type {Write} */ write) {
  try {
    findBrowser(); // installs what is missing
    /** @type {Record<string, string>} */
    const env = {};
    // Without these the browser stage makes its own build.
    if (existsSync(join(site, 'index.html'))) env.STILLSPOT_SITE = site;
    if (existsSync(join(users, 'index.html'))) env.STILLSPOT_USERS = users;
    return await vitest(write, 'browser', 'tests/browser/vitest.config.ts', env);
  } catch (error) {
    write(`The browser tests did not run. ${error instanceof Error ? error.message : error}\n`);
    return FAILED;
  }
}

/** @typedef {Record<string, (write: Write) => Promise<Tally>>} Lane */

/** @type {Lane} */
const WITHOUT_BROWSER = {
  types,
  lint: (write) => check(write, BIOME, 'ci', `--colors=${inColor ? 'force' : 'off'}`, '.'),
  unused: (write) => check(write, KNIP),
  unit: (write) => vitest(write, 'unit', 'vite.config.ts'),
};
/** @type {Lane} */
const WITH_BROWSER = { build, browser };

/** Either lane keeps two cores busy: side by side on two, both take a sixth longer than one after the other. */
const LANES = availableParallelism() > 2 ? [WITHOUT_BROWSER, WITH_BROWSER] : [{ ...WITHOUT_BROWSER, ...WITH_BROWSER }];

function wantedLanes() {
  const names = process.argv.slice(2);
  const known = LANES.flatMap((lane) => Object.keys(lane));
  const unknown = names.filter((name) => !known.includes(name));
  if (unknown.length > 0) throw new Error(`There is no stage "${unknown.join('", "')}". Stages: ${known.join(', ')}.`);
  return LANES.map((lane) =>
    Object.entries(lane)
      .filter(([name]) => names.length === 0 || names.includes(name))
      .map(([name, run]) => ({ name, run })),
  );
}

const removeScratch = () => rmSync(scratch, { recursive: true, force: true });

/** On a signal, ends the programs too, and shows their output. */
function endOn(/** @type {'SIGHUP' | 'SIGINT' | 'SIGTERM'} */ signal, /** @type {() => void} */ flush) {
  process.once(signal, () => {
    for (const child of running) child.kill(signal);
    flush();
    removeScratch();
    process.exit(128 + constants.signals[signal]);
  });
}

async function main() {
  const lanes = wantedLanes();
  ensureDeps();
  const startedAt = performance.now();
  const turns = inTurn(lanes.flat().length, (text) => void process.stdout.write(text));
  endOn('SIGHUP', turns.flush);
  endOn('SIGINT', turns.flush);
  endOn('SIGTERM', turns.flush);
  const results = await runLanes(lanes, turns.writers);
  process.stdout.write('\n');
  for (const { name, tally, seconds } of results)
    process.stdout.write(`${name.padEnd(8)} ${seconds.toFixed(1).padStart(6)} s  ${inWords(tally)}\n`);
  const total = sum(results.map(({ tally }) => tally));
  process.stdout.write(`${'all'.padEnd(8)} ${((performance.now() - startedAt) / 1000).toFixed(1).padStart(6)} s\n`);
  process.stdout.write(`\n${inWords(total)}\n`);
  process.exitCode = total.failed > 0 ? 1 : 0;
}

try {
  await runPlainly(main);
} finally {
  removeScratch();
}
