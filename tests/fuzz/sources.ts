import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { randomJob } from '../helpers/random-job.ts';
import { mutated, mutatedText, randomOf } from './mutate.ts';
import { wallSoup } from './soup.ts';

/** One file in this many is mutated as a text, not as a value. */
const TEXT_EVERY = 5;
/** One file in this many is random walls instead of a mutated plan. */
const SOUP_EVERY = 500;
/** One of this many others is mutated from an invented job instead of a sample. */
const JOB_EVERY = 3;
const JOBS = 500;

/** Folder of plans that once failed, or that are hard. Each run of the tests reads all of them. */
export const CORPUS = join('tests', 'fixtures', 'fuzz');

const samples = readdirSync('samples')
  .filter((name) => name.endsWith('.plan.json'))
  .map((name) => readFileSync(join('samples', name), 'utf8'));

/** Returns whether a seed gives random walls: with more rooms than a plan may have, they may take longer. */
export const isSoup = (seed: number): boolean => seed % SOUP_EVERY === SOUP_EVERY - 1;

/** Returns the text of the plan file of a seed, always the same. */
export function fileOf(seed: number): string {
  if (isSoup(seed)) return soupOf(seed);
  const text = seed % JOB_EVERY === 0 ? JSON.stringify(randomJob(seed % JOBS)) : (samples[seed % samples.length] ?? '');
  return seed % TEXT_EVERY === 0 ? mutatedText(text, seed) : JSON.stringify(mutated(JSON.parse(text), seed));
}

function soupOf(seed: number): string {
  const random = randomOf(seed);
  return wallSoup([300, 300, 1000, 3000, 10_000][random(5)] as number, random);
}

/** Returns the files of the corpus, by name. */
export function corpus(): readonly (readonly [name: string, text: string])[] {
  const names = readdirSync(CORPUS).filter((name) => name.endsWith('.plan.json'));
  return names.map((name) => [name, readFileSync(join(CORPUS, name), 'utf8')] as const);
}
