// Makes sure that node_modules matches package-lock.json. Runs before anything is installed: Node built-ins only.
import { spawnSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { existsSync, mkdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';

export const ROOT = fileURLToPath(new URL('../..', import.meta.url));
const LOCK_FILE = join(ROOT, 'package-lock.json');
const STAMP = join(ROOT, 'node_modules', '.stillspot-stamp');
const INSTALLED = join(ROOT, 'node_modules', '.package-lock.json');
const WAIT_LIMIT_MS = 10 * 60_000;

const sha256 = (/** @type {string | Buffer} */ text) => createHash('sha256').update(text).digest('hex');
const platform = () => `${process.platform} ${process.arch} ${process.versions.modules}`;

/** Throws a plain sentence if this version of Node is not supported. Odd releases after 20 are refused if the tools refuse them. */
export function assertNodeVersion(version = process.versions.node) {
  const [major = 0, minor = 0] = version.split('.').map(Number);
  if (major > 20 ? major === 21 || (major === 22 && minor < 12) : major < 20 || minor < 19)
    throw new Error(`Stillspot needs Node 20.19 or newer in line 20, or 22.12 or newer. This is Node ${version}.`);
}

/** @typedef {{ version?: string, optional?: boolean, integrity?: string }} LockEntry */

/**
 * Returns whether npm's record of the installed packages agrees with the lock file, as after npm was run by hand. Then nothing is
 * reinstalled, which would empty node_modules during another run. Optional entries may be missing, but not different.
 */
function installedFits() {
  if (!existsSync(INSTALLED)) return false;
  /** @type {Record<string, LockEntry>} */
  const wanted = JSON.parse(readFileSync(LOCK_FILE, 'utf8')).packages;
  /** @type {Record<string, LockEntry>} */
  const got = JSON.parse(readFileSync(INSTALLED, 'utf8')).packages;
  const fits = (/** @type {[string, LockEntry]} */ [path, entry]) =>
    path === '' || (got[path] ? got[path].integrity === entry.integrity : entry.optional === true);
  return Object.entries(wanted).every(fits) && Object.keys(got).every((path) => path in wanted);
}

function isReady() {
  const [lockHash, madeFor] = existsSync(STAMP) ? readFileSync(STAMP, 'utf8').split('\n') : [];
  if (madeFor !== undefined && madeFor !== platform()) return false;
  const hash = sha256(readFileSync(LOCK_FILE));
  if (lockHash === hash) return true;
  if (!installedFits()) return false;
  writeFileSync(STAMP, `${hash}\n${platform()}`);
  return true;
}

function npmCi() {
  const args = ['ci', '--include=dev', '--include=optional', '--no-audit', '--no-fund', '--loglevel=error'];
  const npm = process.env.npm_execpath?.endsWith('.js') ? process.env.npm_execpath : null;
  // Standard output is reserved for a caller's result; npm's output is sent to standard error.
  /** @type {import('node:child_process').SpawnSyncOptions} */
  const options = { cwd: ROOT, stdio: ['ignore', 2, 2] };
  const done = npm
    ? spawnSync(process.execPath, [npm, ...args], options)
    : spawnSync('npm', args, { ...options, shell: process.platform === 'win32' });
  if (done.error) throw new Error(`npm could not be started (${done.error.message}). Install npm, then try again.`);
  if (done.status !== 0)
    throw new Error(
      `npm ci ended with code ${done.status}. The network is needed once, to install what Stillspot uses.`,
    );
}

const isAlive = (/** @type {number} */ pid) => {
  try {
    process.kill(pid, 0);
    return true;
  } catch (error) {
    return /** @type {NodeJS.ErrnoException} */ (error).code === 'EPERM';
  }
};

/** Runs `work` while no other process of this folder installs: two npm at once would empty each other's node_modules. */
function whileAlone(/** @type {() => void} */ work) {
  const lock = join(tmpdir(), `stillspot-install-${sha256(ROOT).slice(0, 16)}`);
  const giveUpAt = Date.now() + WAIT_LIMIT_MS;
  for (;;) {
    try {
      mkdirSync(lock);
      break;
    } catch (error) {
      if (/** @type {NodeJS.ErrnoException} */ (error).code !== 'EEXIST') throw error;
    }
    const owner = existsSync(join(lock, 'pid')) ? Number(readFileSync(join(lock, 'pid'), 'utf8')) : 0;
    if (Date.now() > giveUpAt)
      throw new Error(`Another install of Stillspot has not ended in 10 minutes. If none runs, delete ${lock}.`);
    if (owner !== 0 && !isAlive(owner)) rmSync(lock, { recursive: true, force: true });
    else Atomics.wait(new Int32Array(new SharedArrayBuffer(4)), 0, 0, 200);
  }
  try {
    writeFileSync(join(lock, 'pid'), String(process.pid));
    work();
  } finally {
    rmSync(lock, { recursive: true, force: true });
  }
}

/** Installs if needed, else takes a few milliseconds. Throws a plain sentence if it cannot. */
export function ensureDeps() {
  assertNodeVersion();
  if (isReady()) return;
  whileAlone(() => {
    if (isReady()) return; // another process installed while this one waited
    process.stderr.write('Installing what Stillspot needs. This takes about half a minute, once.\n');
    npmCi();
    writeFileSync(STAMP, `${sha256(readFileSync(LOCK_FILE))}\n${platform()}`);
  });
}

/** Runs `main` and turns a thrown error into its sentence on standard error and exit code `code`. */
export async function runPlainly(/** @type {() => unknown} */ main, code = 1) {
  try {
    await main();
  } catch (error) {
    process.stderr.write(`${error instanceof Error ? error.message : String(error)}\n`);
    process.exitCode = code;
  }
}

if (process.argv[1] === fileURLToPath(import.meta.url)) await runPlainly(ensureDeps);
