// Bundles scripts of the tests as the app is bundled: otherwise the tests' module loader, which makes imports properties, would be measured.
import { mkdirSync, mkdtempSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { ROOT } from './ensure-deps.mjs';

/** Inside node_modules, so that the bundle finds the packages. */
const CACHE = join(ROOT, 'node_modules', '.cache', 'stillspot');

async function bundleTo(/** @type {string} */ folder, /** @type {Record<string, string>} */ input) {
  const { build } = await import('vite');
  await build({
    root: ROOT,
    configFile: false,
    logLevel: 'silent',
    resolve: { alias: { pdfkit: join(ROOT, 'node_modules', 'pdfkit', 'js', 'pdfkit.browser.mjs') } },
    build: {
      ssr: true,
      target: 'node20',
      minify: false,
      outDir: folder,
      emptyOutDir: false,
      copyPublicDir: false,
      rolldownOptions: { input, output: { entryFileNames: '[name].mjs', chunkFileNames: '[name]-[hash].mjs' } },
    },
  });
}

/**
 * Bundles the modules into a new folder, as NAME.mjs, and removes it after `use`.
 * @param {string} name of the folder
 * @param {Record<string, string>} entries path of each module from the root, by its name
 * @param {(folder: string) => Promise<void>} use
 */
export async function withBundle(name, entries, use) {
  mkdirSync(CACHE, { recursive: true });
  const folder = mkdtempSync(join(CACHE, `${name}-`));
  try {
    await bundleTo(folder, Object.fromEntries(Object.entries(entries).map(([key, path]) => [key, join(ROOT, path)])));
    await use(folder);
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}
