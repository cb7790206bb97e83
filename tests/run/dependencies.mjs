// Prints each dependency: version, license, size, use, and its bytes in each chunk of the build:
// npm run dependencies -- [--age] [NAME…]. `--age` asks the registry when the version in use was published.
import { spawnSync } from 'node:child_process';
import { readdirSync, readFileSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { ensureDeps, ROOT, runPlainly } from './ensure-deps.mjs';

const DAY_MS = 86_400_000;
const readJson = (/** @type {string[]} */ ...path) => JSON.parse(readFileSync(join(ROOT, ...path), 'utf8'));
const kB = (/** @type {number} */ bytes) =>
  `${(bytes / 1000).toLocaleString('en-US', { maximumFractionDigits: bytes < 10_000 ? 1 : 0 })} kB`;

/** Returns the bytes of the files of a package, without the packages that it depends on. */
function sizeOf(/** @type {string} */ name) {
  return readdirSync(join(ROOT, 'node_modules', name), { recursive: true, withFileTypes: true })
    .filter(
      (entry) =>
        entry.isFile() &&
        !/[\\/]node_modules[\\/]?/.test(entry.parentPath.slice(join(ROOT, 'node_modules').length + 1)),
    )
    .reduce((sum, entry) => sum + statSync(join(entry.parentPath, entry.name)).size, 0);
}

/** Start of the grant in the text of a license, by license name: for packages that do not name their license. */
const LICENSE_TEXTS = { MIT: 'Permission is hereby granted', BSD: 'Redistribution and use in source' };

function licenseIn(/** @type {string} */ name) {
  const folder = join(ROOT, 'node_modules', name);
  const file = readdirSync(folder).find((each) => /^licen[cs]e/i.test(each));
  const text = file ? readFileSync(join(folder, file), 'utf8') : '';
  return Object.entries(LICENSE_TEXTS).find(([, begins]) => text.includes(begins))?.[0] ?? 'license not named';
}

/** Returns when this version was published, and how many days ago; "–" if the registry does not say. */
function ageOf(/** @type {string} */ name, /** @type {string} */ version) {
  const { stdout } = spawnSync('npm', ['view', name, 'time', '--json'], {
    encoding: 'utf8',
    shell: process.platform === 'win32',
  });
  try {
    const at = JSON.parse(stdout)[version];
    return `${at.slice(0, 10)}, ${Math.floor((Date.now() - Date.parse(at)) / DAY_MS)} days`;
  } catch {
    return '–';
  }
}

/** Returns the package that a module belongs to; null for our own modules. */
const packageOf = (/** @type {string} */ module) =>
  /^.*[\\/]node_modules[\\/]((?:@[^\\/]+[\\/])?[^\\/]+)/.exec(module.replace(/^\0/, ''))?.[1]?.replaceAll('\\', '/') ??
  null;

/**
 * Returns the minified bytes of each package in each chunk, estimated by its share of the chunk before minification.
 * @returns {Promise<Map<string, Map<string, number>>>} by package, then by chunk
 */
async function partsOfBuild() {
  const { build } = await import('vite');
  const made = /** @type {{ output: any[] }} */ (
    /** @type {unknown} */ (await build({ root: ROOT, logLevel: 'silent', build: { write: false } }))
  );
  /** @type {Map<string, Map<string, number>>} */
  const parts = new Map();
  for (const { type, name, code, modules } of made.output) {
    if (type !== 'chunk') continue;
    const lengths = Object.entries(modules).map(([module, { renderedLength }]) => ({ module, length: renderedLength }));
    const whole = lengths.reduce((sum, { length }) => sum + length, 0);
    for (const { module, length } of lengths) {
      const owner = packageOf(module);
      if (!owner || length === 0) continue;
      const chunks = parts.get(owner) ?? new Map();
      parts.set(owner, chunks.set(name, (chunks.get(name) ?? 0) + (code.length * length) / whole));
    }
  }
  return parts;
}

async function main() {
  ensureDeps();
  process.chdir(ROOT);
  const named = process.argv.slice(2).filter((arg) => !arg.startsWith('--'));
  const about = readJson('package.json');
  /** @type {Record<string, string>} */
  const reasons = readJson('tests', 'run', 'dependencies.json');
  const parts = await partsOfBuild();
  for (const [title, list] of [
    ['Used by the app', about.dependencies],
    ['To build and test', about.devDependencies],
  ]) {
    process.stdout.write(`\n${title}\n`);
    for (const name of Object.keys(list)) {
      if (named.length > 0 && !named.includes(name)) continue;
      const { version, license } = readJson('node_modules', name, 'package.json');
      const facts = [`${name} ${version}`, license ?? licenseIn(name), `${kB(sizeOf(name))} on disk`];
      if (process.argv.includes('--age')) facts.push(ageOf(name, version));
      process.stdout.write(
        `\n  ${facts.join(', ')}\n    ${reasons[name] ?? 'NO REASON: add one to tests/run/dependencies.json'}\n`,
      );
      const chunks = [...(parts.get(name) ?? [])].sort((a, b) => b[1] - a[1]);
      if (chunks.length > 0)
        process.stdout.write(
          `    in the build: ${chunks.map(([chunk, bytes]) => `${chunk} ${kB(bytes)}`).join(', ')}\n`,
        );
    }
  }
  const own = new Set([...Object.keys(about.dependencies), ...Object.keys(about.devDependencies)]);
  process.stdout.write('\nIn the build through one of these\n');
  for (const [name, chunks] of [...parts].sort()) {
    if (own.has(name) || named.length > 0) continue;
    process.stdout.write(`  ${name}: ${[...chunks].map(([chunk, bytes]) => `${chunk} ${kB(bytes)}`).join(', ')}\n`);
  }
}

await runPlainly(main);
