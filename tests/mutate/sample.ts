import { readdirSync, readFileSync } from 'node:fs';
import { keyOf } from '../run/mutate-survivors.mjs';
import { instrumented, type Mutant, mutantsOf } from './instrument.ts';

/** Folders of `geometry/` that are mutated. */
const MUTATED = ['check', 'region', 'rules', 'recheck'];
/** Tables of citations of published texts, whose wording no test repeats. */
const NOT_MUTATED = ['geometry/rules/types.ts'];

/** The tests that concern the files. */
const TESTS =
  /^(?:geometry\/(?:check|region|rules|recheck|messages)\/.*|geometry\/(?:search\/[^/]+|moved-plans)|published-values|samples)\.test\.ts$/;

export interface Campaign {
  readonly all: number;
  readonly mutants: readonly Mutant[];
  /** The instrumented code of each mutated file. */
  readonly sources: ReadonlyMap<string, string>;
  readonly testFiles: readonly string[];
}

/** Returns `count` mutants, the same ones for the same seed, spread over all files; all of them if there are fewer. */
export function campaign(count: number, seed: number, only: string): Campaign {
  return campaignWith((all) => shuffled(all, seed).slice(0, count), only);
}

/** Returns the mutants with these keys, so that a survivor is found again after lines have moved. */
export function campaignOf(keys: readonly string[]): Campaign {
  return campaignWith((all) => all.filter((mutant) => keys.includes(keyOf({ ...mutant, state: '' }))), '');
}

function campaignWith(chosen: (all: readonly Mutant[]) => readonly Mutant[], only: string): Campaign {
  const files = MUTATED.flatMap((folder) => filesIn(`geometry/${folder}`))
    .filter((file) => !NOT_MUTATED.includes(file) && file.includes(only))
    .sort();
  const all: Mutant[] = [];
  const codes = new Map(files.map((file) => [file, readFileSync(file, 'utf8')]));
  for (const [file, code] of codes) all.push(...mutantsOf(file, code, all.length));
  const mutants = [...chosen(all)].sort((a, b) => a.id - b.id);
  const sources = new Map(
    [...codes].map(([file, code]) => [
      file,
      instrumented(
        code,
        mutants.filter((mutant) => mutant.file === file),
      ),
    ]),
  );
  return { all: all.length, mutants, sources, testFiles: filesIn('tests').filter(isTest) };
}

const isTest = (file: string): boolean => TESTS.test(file.slice('tests/'.length));

/** Returns the TypeScript files below a folder, by path from the root. */
function filesIn(folder: string): readonly string[] {
  return readdirSync(folder, { recursive: true, encoding: 'utf8' })
    .filter((name) => name.endsWith('.ts'))
    .map((name) => `${folder}/${name.replaceAll('\\', '/')}`)
    .sort();
}

/** Returns the items in an order that depends only on the seed (mulberry32, public domain; Fisher and Yates). */
function shuffled<T>(items: readonly T[], seed: number): T[] {
  let state = seed >>> 0;
  const random = () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let t = Math.imul(state ^ (state >>> 15), 1 | state);
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
  const order = [...items];
  for (let i = order.length - 1; i > 0; i--) {
    const k = Math.floor(random() * (i + 1));
    [order[i], order[k]] = [order[k] as T, order[i] as T];
  }
  return order;
}
