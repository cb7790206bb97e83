// Measures the engine and the libraries that could replace it.
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { withBundle } from './bundle.mjs';
import { ensureDeps, ROOT, runPlainly } from './ensure-deps.mjs';

await runPlainly(async () => {
  ensureDeps();
  process.chdir(ROOT);
  await withBundle('bench', { main: 'tests/bench/main.ts', child: 'tests/bench/child.ts' }, async (folder) => {
    const { run } = await import(pathToFileURL(join(folder, 'main.mjs')).href);
    await run(process.argv.slice(2), join(folder, 'child.mjs'));
  });
});
