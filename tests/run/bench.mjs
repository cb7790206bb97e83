// Measures the engine and the libraries that could stand in for it. Bundled first, as the app is: a module loader that
// turns every import into a property would be measured instead.
import { mkdirSync, mkdtempSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { ensureDeps, ROOT, runPlainly } from './ensure-deps.mjs';

/** Inside node_modules, so that the bundle finds the packages. */
const CACHE = join(ROOT, 'node_modules', '.cache', 'stillspot');

async function bundleTo(/** @type {string} */ folder) {
  const { build } = await import('vite');
  const source = (/** @type {string} */ name) => join(ROOT, 'tests', 'bench', name);
  await build({
    root: ROOT,
    configFile: false,
    logLevel: 'silent',
    build: {
      ssr: true,
      target: 'node20',
      minify: false,
      outDir: folder,
      emptyOutDir: false,
      copyPublicDir: false,
      rolldownOptions: {
        input: { main: source('main.ts'), child: source('child.ts') },
        output: { entryFileNames: '[name].mjs', chunkFileNames: '[name]-[hash].mjs' },
      },
    },
  });
}

async function main() {
  ensureDeps();
  process.chdir(ROOT);
  mkdirSync(CACHE, { recursive: true });
  const folder = mkdtempSync(join(CACHE, 'bench-'));
  try {
    await bundleTo(folder);
    const { run } = await import(pathToFileURL(join(folder, 'main.mjs')).href);
    await run(process.argv.slice(2), join(folder, 'child.mjs'));
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

await runPlainly(main);
