// Writes the published JSON Schema of the plan file from the definition that the reader validates with.
// A test fails while the file is stale.
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { ensureDeps, ROOT } from './ensure-deps.mjs';

ensureDeps();
const { runnerImport } = await import('vite');
const { module } = await runnerImport(join(ROOT, 'tests', 'run', 'plan-schema.ts'));
writeFileSync(join(ROOT, module.SCHEMA_FILE), module.planSchemaText());
console.log(`Wrote ${module.SCHEMA_FILE}`);
