// Writes the advance widths of the sheet font, read from the font files that the app ships.
// Run it after the font package changes; a test fails while the table is stale.
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { ensureDeps, ROOT } from './ensure-deps.mjs';

ensureDeps();
process.chdir(ROOT);
const { runnerImport } = await import('vite');
const { module } = await runnerImport(join(ROOT, 'tests', 'helpers', 'font-widths.ts'));
writeFileSync(join(ROOT, module.WIDTHS_FILE), module.widthsFileText());
console.log(`Wrote ${module.WIDTHS_FILE}`);
