import { mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { troubleWith } from './battery.ts';
import { minimized } from './minimize.ts';
import { mutated, mutatedText } from './mutate.ts';

/** Of a run by `npm run fuzz`; 0 in the test suite, where a fixed number of files is tried. */
const SECONDS = Number(process.env.FUZZ_SECONDS ?? 0);
const FIRST_SEED = Number(process.env.FUZZ_SEED ?? 1);
const COUNT = 30;
/** Every so many files also goes through regions, spots and papers. */
const HEAVY_EVERY = 25;
/** Every so many is broken as a text, not as a value. */
const TEXT_EVERY = 5;

const SAVED = join('node_modules', '.cache', 'stillspot', 'fuzz');
const samples = readdirSync('samples')
  .filter((name) => name.endsWith('.plan.json'))
  .map((name) => readFileSync(join('samples', name), 'utf8'));

const fileOf = (seed: number): string => {
  const text = samples[seed % samples.length] ?? '';
  return seed % TEXT_EVERY === 0 ? mutatedText(text, seed) : JSON.stringify(mutated(JSON.parse(text), seed));
};

/** Saves the smallest file that still fails. Returns its path. */
async function save(seed: number, text: string, heavy: boolean): Promise<string> {
  const small = await minimized(text, async (each) => (await troubleWith(each, heavy)) !== null);
  mkdirSync(SAVED, { recursive: true });
  const path = join(SAVED, `seed-${seed}.plan.json`);
  writeFileSync(path, small);
  return path;
}

describe('mutated plan files', () => {
  it('are read or refused, and whatever is read goes through every command', async () => {
    const end = performance.now() + SECONDS * 1000;
    const failures: string[] = [];
    // Printed, not judged: how fast a file is depends on who else uses the machine.
    let slowest = 0;
    let seed = FIRST_SEED;
    for (; SECONDS > 0 ? performance.now() < end : seed < FIRST_SEED + COUNT; seed++) {
      const [text, heavy] = [fileOf(seed), seed % HEAVY_EVERY === 0];
      const start = performance.now();
      const trouble = await troubleWith(text, heavy);
      slowest = Math.max(slowest, performance.now() - start);
      if (trouble) failures.push(`seed ${seed}, ${await save(seed, text, heavy)}: ${trouble}`);
    }
    if (SECONDS > 0)
      process.stdout.write(
        `${seed - FIRST_SEED} files, seeds ${FIRST_SEED} to ${seed - 1}, the slowest ${Math.round(slowest)} ms, ${failures.length} failures\n`,
      );
    expect(failures).toEqual([]);
  });
});
