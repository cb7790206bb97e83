/** A long run: thousands of files through all steps of the battery. Arguments: seconds, first seed, most files. */
import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { setSunSource } from '../../geometry/sun/sun-floor.ts';
import { sweptArea } from '../../geometry/sun/swept.ts';
import { PAPERS, troubleWith } from './battery.ts';
import { minimized } from './minimize.ts';
import { CORPUS, fileOf, isSoup } from './sources.ts';

/** Longest time of a step, ms of processor time; a slow file is tried again, because the first run may compile code. */
const MOST_MS = 2000;
const TELL_EVERY = 1000;
/** A longer text, in characters, is saved whole: minimizing it takes hours. */
const LONGEST_TO_MINIMIZE = 100_000;
/** One file in this many is drawn on all papers, the others on one. */
const ALL_PAPERS_EVERY = 10;

const papersOf = (seed: number) =>
  seed % ALL_PAPERS_EVERY === 0 ? PAPERS : PAPERS.slice(seed % PAPERS.length).slice(0, 1);

/** Saves the smallest text that still fails as a fixture that the tests read. Returns its path. */
async function save(name: string, text: string, fails: (text: string) => Promise<boolean>): Promise<string> {
  mkdirSync(CORPUS, { recursive: true });
  const path = join(CORPUS, `${name}.plan.json`);
  writeFileSync(path, text); // at once: minimizing may take long
  if (text.length > LONGEST_TO_MINIMIZE) return path;
  writeFileSync(path, await minimized(text, fails));
  return path;
}

/** Returns the live heap after a garbage collection, MB. */
function living(): number {
  globalThis.gc?.();
  return process.memoryUsage().heapUsed / 2 ** 20;
}

const [seconds, firstSeed, most] = process.argv.slice(2).map(Number) as [number, number, number];
const end = performance.now() + seconds * 1000;
const found = { plans: 0, failed: 0, slow: 0 };
let slowest = { ms: 0, seed: 0, what: '' };
let slowestSoup = 0;
let seed = firstSeed;

const tell = () =>
  process.stdout.write(
    `${seed - firstSeed} files (${found.plans} read), seeds ${firstSeed} to ${seed - 1}; ${found.failed} failed, ${found.slow} over 2 s; ` +
      `the slowest step ${Math.round(slowest.ms)} ms (${slowest.what}, seed ${slowest.seed}), of walls at random ${Math.round(slowestSoup)} ms; ${living().toFixed(1)} MB live\n`,
  );

setSunSource(sweptArea);
for (; performance.now() < end && seed - firstSeed < most; seed++) {
  const text = fileOf(seed);
  let result = await troubleWith(text, papersOf(seed));
  if (result.slowest.ms > MOST_MS) result = await troubleWith(text, papersOf(seed));
  const { ms, what } = result.slowest;
  if (result.isPlan) found.plans++;
  if (isSoup(seed)) slowestSoup = Math.max(slowestSoup, ms);
  else if (ms > slowest.ms) slowest = { ms, seed, what };
  if (result.trouble) {
    found.failed++;
    const path = await save(`seed-${seed}`, text, async (each) => (await troubleWith(each)).trouble !== null);
    process.stdout.write(`seed ${seed}, ${path}: ${result.trouble}\n`);
  } else if (ms > MOST_MS && !isSoup(seed)) {
    found.slow++;
    process.stdout.write(`seed ${seed}: ${what} took ${Math.round(ms)} ms\n`);
  }
  if ((seed - firstSeed) % TELL_EVERY === TELL_EVERY - 1) tell();
}
tell();
process.exitCode = found.failed + found.slow > 0 ? 1 : 0;
