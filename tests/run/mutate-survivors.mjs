import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { ROOT } from './ensure-deps.mjs';

/**
 * @typedef {{ id: number, file: string, line: number, before: string, text: string, context: string, state: string }} Result
 */

const FOLDER = join(ROOT, 'tests', 'mutate');
const CACHE = join(ROOT, 'node_modules', '.cache', 'stillspot');
/** The last run, for \`again\`. */
const LAST = join(CACHE, 'mutants.json');

/** Returns the key of a mutant, by its code: line numbers change. */
export const keyOf = (/** @type {Result} */ { file, before, text, context }) =>
  `${file} | ${context} | ${before} → ${text}`;

const isSurvivor = (/** @type {Result} */ { state }) => state === 'survived' || state === 'not reached';

/** @returns {{ seed: string, whole: boolean, results: Result[] }} the last run */
export const lastRun = () => JSON.parse(readFileSync(LAST, 'utf8'));

/** Returns the results of a run, those of its survivors replaced by the results of trying them again. */
export function withAgain(/** @type {Result[]} */ results, /** @type {Result[]} */ again) {
  // If several on one line have the same key, a survivor counts for all.
  const byKey = new Map(
    [...again].sort((a, b) => Number(isSurvivor(a)) - Number(isSurvivor(b))).map((one) => [keyOf(one), one]),
  );
  return results.map((one) => (isSurvivor(one) ? (byKey.get(keyOf(one)) ?? one) : one));
}

/** Writes the keys of the survivors into a file, to be tried again. */
export function writeKeys(/** @type {string} */ file, /** @type {Result[]} */ results) {
  writeFileSync(file, JSON.stringify(results.filter(isSurvivor).map(keyOf)));
}

const cell = (/** @type {string} */ text) =>
  `\`${text.replaceAll('|', '\\|').replaceAll('`', "'").replace(/\s+/g, ' ').slice(0, 110)}\``;

/**
 * Writes SURVIVORS.md, with the reasons of reasons.json, unless only a part of the files was run. Returns the tally in words.
 * @param {Result[]} results
 * @param {{ seed: string, whole: boolean }} run
 */
export function writeSurvivors(results, { seed, whole }) {
  /** @type {Record<string, string>} */
  const reasons = JSON.parse(readFileSync(join(FOLDER, 'reasons.json'), 'utf8'));
  const survivors = results.filter(isSurvivor);
  const killed = results.length - survivors.length;
  const share = (/** @type {number} */ part, /** @type {number} */ of) =>
    `${((100 * part) / Math.max(1, of)).toFixed(1)} %`;
  const folders = ['check', 'region', 'rules', 'recheck'].map((name) => {
    const all = results.filter(({ file }) => file.startsWith(`geometry/${name}/`));
    const left = all.filter((one) => survivors.includes(one)).length;
    return `| \`geometry/${name}/\` | ${all.length} | ${all.length - left} | ${share(all.length - left, all.length)} |`;
  });
  const same = survivors.filter((one) => (reasons[keyOf(one)] ?? '').startsWith('The same')).length;
  const tally = `${killed} of ${results.length} mutants noticed (${share(killed, results.length)}); of the ${survivors.length} others ${same} change nothing: ${share(killed, results.length - same)} of those that do`;
  const rows = survivors.map(
    (one) =>
      `| \`${one.file.slice('geometry/'.length)}\` | ${cell(one.context)} | ${cell(one.before)} | ${cell(one.text)} | ${reasons[keyOf(one)] ?? ''} |`,
  );
  const page = `# Mutants that no test notices

Written by \`npm run mutate\`; the reasons are in \`reasons.json\`. ${results.length} mutants, seed ${seed}: ${tally}.

| files | mutants | noticed | |
| --- | ---: | ---: | ---: |
${folders.join('\n')}

| file | line | there | instead | why it is not noticed |
| --- | --- | --- | --- | --- |
${rows.join('\n')}
`;
  writeFileSync(whole ? join(FOLDER, 'SURVIVORS.md') : join(CACHE, 'survivors.md'), page);
  writeFileSync(LAST, JSON.stringify({ seed, whole, results }));
  return tally;
}
