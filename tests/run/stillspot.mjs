// Command line launcher: bundles src/cli/main.ts once for each state of the sources, then runs the bundle.
// Standard output is for the command's result only; all messages of this file are written to standard error.
import { createHash } from 'node:crypto';
import { existsSync, mkdirSync, mkdtempSync, readdirSync, readFileSync, renameSync, rmSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { ensureDeps, ROOT, runPlainly } from './ensure-deps.mjs';

const CACHE = join(ROOT, 'node_modules', '.cache', 'stillspot');
const ENTRY = join(ROOT, 'src', 'cli', 'main.ts');
/** All of src/, not only src/cli, so that an old bundle is never run, whatever the command line imports. */
const SOURCES = ['geometry', 'src', 'package-lock.json', join('tests', 'run', 'stillspot.mjs')];
const DAY_MS = 86_400_000;
/** Exit code for a fault of Stillspot itself: 1 would read as a verdict, 2 as a fault of the file. */
const OWN_FAULT = 3;

/** Returns every file of SOURCES, in the same order on every system. */
function sourceFiles() {
  const inFolder = (/** @type {string} */ path) =>
    readdirSync(path, { recursive: true, withFileTypes: true })
      .filter((entry) => entry.isFile())
      .map((entry) => join(entry.parentPath, entry.name));
  return SOURCES.map((name) => join(ROOT, name))
    .flatMap((path) => (statSync(path).isDirectory() ? inFolder(path) : [path]))
    .sort();
}

function sourceHash() {
  const hash = createHash('sha256');
  for (const file of sourceFiles()) hash.update(`${file}\0`).update(readFileSync(file)).update('\0');
  return hash.digest('hex').slice(0, 16);
}

/** Bundles into a new folder and renames it when complete, so that another process sees all of it or nothing. */
async function bundleTo(/** @type {string} */ folder) {
  const { build } = await import('vite');
  mkdirSync(CACHE, { recursive: true });
  const unfinished = mkdtempSync(join(CACHE, 'unfinished-'));
  try {
    await build({
      root: ROOT,
      configFile: false,
      logLevel: 'silent',
      resolve: { alias: { pdfkit: join(ROOT, 'node_modules', 'pdfkit', 'js', 'pdfkit.browser.mjs') } },
      ssr: { noExternal: true, external: ['@resvg/resvg-js'] }, // a native binary cannot be bundled
      build: {
        ssr: ENTRY,
        target: 'node20',
        outDir: unfinished,
        emptyOutDir: false,
        copyPublicDir: false,
        rolldownOptions: { output: { entryFileNames: 'main.mjs', chunkFileNames: '[name]-[hash].mjs' } },
      },
    });
    renameSync(unfinished, folder);
  } catch (error) {
    if (!existsSync(join(folder, 'main.mjs'))) throw error; // else another process was first, with the same content
  } finally {
    rmSync(unfinished, { recursive: true, force: true });
  }
}

/** Old bundles are kept for a day: a process that still runs one may load a part of it later. */
function deleteOldBundles(/** @type {string} */ current) {
  for (const name of readdirSync(CACHE)) {
    const path = join(CACHE, name);
    if (path === current || !/^(cli|unfinished)-/.test(name)) continue;
    if (Date.now() - statSync(path).mtimeMs > DAY_MS) rmSync(path, { recursive: true, force: true });
  }
}

/** @returns {Promise<{ run: (argv: string[]) => Promise<number> }>} */
async function loadCommandLine() {
  const folder = join(CACHE, `cli-${sourceHash()}`);
  if (!existsSync(join(folder, 'main.mjs'))) {
    await bundleTo(folder);
    deleteOldBundles(folder);
  }
  return import(pathToFileURL(join(folder, 'main.mjs')).href);
}

async function main() {
  ensureDeps();
  const { run } = await loadCommandLine();
  // npm changes to the project's folder first, but file names are relative to the folder of the caller.
  if (process.env.npm_lifecycle_event === 'stillspot' && process.env.INIT_CWD) process.chdir(process.env.INIT_CWD);
  try {
    // Never process.exit: it drops output that a pipe has not taken yet.
    process.exitCode = await run(process.argv.slice(2));
  } catch (error) {
    const trace = error instanceof Error ? error.stack : String(error);
    throw new Error(`Stillspot itself failed and has no answer for this call. Please report this:\n${trace}`);
  }
}

// A reader that closes early (`| head`) is not an error.
process.stdout.on('error', (/** @type {NodeJS.ErrnoException} */ error) => {
  if (error.code !== 'EPIPE') throw error;
});
await runPlainly(main, OWN_FAULT);
