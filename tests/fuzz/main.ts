/** A long run: files by the thousand through the whole battery. Arguments: seconds, first seed, most files. */
import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { setSunSource } from '../../geometry/sun/sun-floor.ts';
import { sweptArea } from '../../geometry/sun/swept.ts';
import { PAPERS, troubleWith } from './battery.ts';
import { minimized } from './minimize.ts';
import { CORPUS, fileOf } from './sources.ts';

/** What a file may take at most, ms of processor time; a slow one is tried again, because the first run may compile code. */
const MOST_MS = 2000;
const TELL_EVERY = 1000;
/** Every so many files are drawn on all papers, the others on one. */
const ALL_PAPERS_EVERY = 10;

const papersOf = (seed: number) =>
  seed % ALL_PAPERS_EVERY === 0 ? PAPERS : PAPERS.slice(seed % PAPERS.length).slice(0, 1);

/** Returns ms of processor time since a moment, all threads. */
function cpuSince(before: NodeJS.CpuUsage): number {
  const { user, system } = process.cpuUsage(before);
  return (user + system) / 1000;
}

async function timed(
  text: string,
  seed: number,
): Promise<{ readonly trouble: string | null; readonly ms: number; readonly isPlan: boolean }> {
  const before = process.cpuUsage();
  const { trouble, isPlan } = await troubleWith(text, papersOf(seed));
  return { trouble, ms: cpuSince(before), isPlan };
}

/** Saves the smallest text that still fails as a fixture that the tests read. Returns its path. */
async function save(name: string, text: string, fails: (text: string) => Promise<boolean>): Promise<string> {
  mkdirSync(CORPUS, { recursive: true });
  const path = join(CORPUS, `${name}.plan.json`);
  writeFileSync(path, text); // at once: to find a smaller one may take long
  writeFileSync(path, await minimized(text, fails));
  return path;
}

/** Returns the memory that lives after a collection, MB. */
function living(): number {
  globalThis.gc?.();
  return process.memoryUsage().heapUsed / 2 ** 20;
}

const [seconds, firstSeed, most] = process.argv.slice(2).map(Number) as [number, number, number];
const end = performance.now() + seconds * 1000;
const found = { plans: 0, failed: 0, slow: 0 };
let slowest = { ms: 0, seed: 0 };
let seed = firstSeed;

const tell = () =>
  process.stdout.write(
    `${seed - firstSeed} files (${found.plans} read), seeds ${firstSeed} to ${seed - 1}; ${found.failed} failed, ${found.slow} over 2 s; ` +
      `the slowest ${Math.round(slowest.ms)} ms (seed ${slowest.seed}); ${living().toFixed(1)} MB live\n`,
  );

setSunSource(sweptArea);
for (; performance.now() < end && seed - firstSeed < most; seed++) {
  const text = fileOf(seed);
  let result = await timed(text, seed);
  if (result.ms > MOST_MS) result = await timed(text, seed);
  if (result.isPlan) found.plans++;
  if (result.ms > slowest.ms) slowest = { ms: result.ms, seed };
  if (result.trouble) {
    found.failed++;
    const path = await save(`seed-${seed}`, text, async (each) => (await troubleWith(each)).trouble !== null);
    process.stdout.write(`seed ${seed}, ${path}: ${result.trouble}\n`);
  } else if (result.ms > MOST_MS) {
    found.slow++;
    process.stdout.write(`seed ${seed}: ${Math.round(result.ms)} ms\n`);
  }
  if ((seed - firstSeed) % TELL_EVERY === TELL_EVERY - 1) tell();
}
tell();
process.exitCode = found.failed + found.slow > 0 ? 1 : 0;
