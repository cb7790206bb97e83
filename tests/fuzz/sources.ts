import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { randomJob } from '../helpers/random-job.ts';
import { mutated, mutatedText, randomOf } from './mutate.ts';
import { wallSoup } from './soup.ts';

/** Every so many files is broken as a text, not as a value. */
const TEXT_EVERY = 5;
/** Every so many is a soup of walls instead of a mutated plan. */
const SOUP_EVERY = 500;
/** Every so many of the others starts at an invented job instead of a sample. */
const JOB_EVERY = 3;
const JOBS = 500;

/** Plans that once failed, or that are hard. Each is read in every run of the tests. */
export const CORPUS = join('tests', 'fixtures', 'fuzz');

const samples = readdirSync('samples')
  .filter((name) => name.endsWith('.plan.json'))
  .map((name) => readFileSync(join('samples', name), 'utf8'));

/** Whether a seed gives a soup of walls: with more rooms than a plan may have, it may take longer. */
export const isSoup = (seed: number): boolean => seed % SOUP_EVERY === SOUP_EVERY - 1;

/** Returns the text of the plan file of a seed: the same one each time. */
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
