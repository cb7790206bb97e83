/** Tries mutants one by one: `npm run mutate`. Writes a line for each to the file of results. */
import { appendFileSync, existsSync, readFileSync, writeFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { type Bundle, bundleTests } from './bundle.ts';
import { campaign, campaignOf } from './sample.ts';
import type { Declared } from './shim.ts';

const { MUTATE_COUNT = '400', MUTATE_SEED = '1', MUTATE_ONLY = '', MUTATE_KEYS = '', MUTATE_FOLDER = '' } = process.env;
const RESULTS = `${MUTATE_FOLDER}/results.jsonl`;
const COVERAGE = `${MUTATE_FOLDER}/coverage.json`;

/** Time for the tests of one mutant, ms of processor time without a mutant; tests beyond it are left out. */
const MOST_MS = 10_000;
/** Number of times that a mutant is reached from which the loop counts as endless. */
const MOST_HITS = 2e7;

interface Covered {
  readonly file: string;
  /** ms of processor time to load the file. */
  readonly load: number;
  /** Ids of the mutants that are reached while it loads. */
  readonly hits: readonly number[];
  readonly tests: readonly { readonly name: string; readonly ms: number; readonly hits: readonly number[] }[];
}

const scope = globalThis as unknown as { isMutant: (id: number) => boolean; collector: unknown };

/** Loads a test file. Returns the tests that it declares. */
function testsOf(load: (file: string) => void, file: string): readonly Declared[] {
  const tests: Declared[] = [];
  scope.collector = { tests, path: [], after: [], library: { expect } };
  load(file);
  return tests;
}

/** Runs all tests once without a mutant, and records which mutants each test reaches. A test that fails is not used. */
async function coverageOf(bundle: Bundle, testFiles: readonly string[]): Promise<readonly Covered[]> {
  let hits = new Set<number>();
  scope.isMutant = (id) => {
    hits.add(id);
    return false;
  };
  const hitsOf = async (run: () => unknown): Promise<{ readonly ms: number; readonly hits: number[] }> => {
    hits = new Set();
    const before = process.cpuUsage();
    await run();
    const { user, system } = process.cpuUsage(before);
    return { ms: (user + system) / 1000, hits: [...hits] };
  };
  const covered: Covered[] = [];
  for (const file of testFiles) {
    let tests: readonly Declared[] = [];
    const loaded = await hitsOf(() => {
      tests = testsOf(bundle.loader(), file);
    });
    const rows: Covered['tests'][number][] = [];
    for (const { name, run } of tests) {
      try {
        rows.push({ name, ...(await hitsOf(run)) });
      } catch (error) {
        process.stdout.write(`without a mutant ${file} fails: ${name}: ${error}\n`);
      }
    }
    covered.push({ file, load: loaded.ms, hits: loaded.hits, tests: rows });
  }
  return covered;
}

interface Plan {
  readonly file: string;
  readonly ms: number;
  readonly names: readonly string[];
}

/** Returns the tests for a mutant, the shortest first: those that reach it, within `MOST_MS`. */
function plansOf(id: number, coverage: readonly Covered[]): readonly Plan[] {
  const reaching = coverage
    .flatMap(({ file, load, hits, tests }) => {
      const isStatic = hits.includes(id);
      return tests.filter((test) => isStatic || test.hits.includes(id)).map((test) => ({ ...test, file, load }));
    })
    .sort((a, b) => a.ms - b.ms);
  const plans = new Map<string, { file: string; ms: number; names: string[] }>();
  let sum = 0;
  for (const { file, load, name, ms } of reaching) {
    const plan = plans.get(file) ?? { file, ms: load, names: [] };
    const more = ms + (plan.names.length === 0 ? load : 0);
    if (sum > 0 && sum + more > MOST_MS) continue;
    sum += more;
    plan.ms += ms;
    plan.names.push(name);
    plans.set(file, plan);
  }
  return [...plans.values()].sort((a, b) => a.ms - b.ms);
}

/** Returns the name of the first test that notices the mutant; null when none does. */
async function killerOf(id: number, bundle: Bundle, plans: readonly Plan[]): Promise<string | null> {
  let count = 0;
  scope.isMutant = (one) => {
    if (one !== id) return false;
    if (++count > MOST_HITS) throw new Error('a loop without end');
    return true;
  };
  const load = bundle.loader();
  for (const { file, names } of plans) {
    let tests: readonly Declared[];
    try {
      tests = testsOf(load, file);
    } catch {
      return `${file}: it does not load`;
    }
    const wanted = new Map(tests.map((test) => [test.name, test]));
    for (const name of names) {
      try {
        const test = wanted.get(name);
        if (!test) return `${file}: it declares other tests`;
        await test.run();
      } catch {
        return `${file}: ${name}`;
      }
    }
  }
  return null;
}

it('tries mutants', async () => {
  const { all, mutants, sources, testFiles } = MUTATE_KEYS
    ? campaignOf(JSON.parse(readFileSync(MUTATE_KEYS, 'utf8')))
    : campaign(Number(MUTATE_COUNT), Number(MUTATE_SEED), MUTATE_ONLY);
  const bundle = await bundleTests(testFiles, sources);
  const coverage: readonly Covered[] = existsSync(COVERAGE)
    ? JSON.parse(readFileSync(COVERAGE, 'utf8'))
    : await coverageOf(bundle, testFiles);
  writeFileSync(COVERAGE, JSON.stringify(coverage));
  const done = existsSync(RESULTS)
    ? readFileSync(RESULTS, 'utf8')
        .split('\n')
        .filter(Boolean)
        .map((line) => JSON.parse(line).id)
    : [];
  process.stdout.write(`${mutants.length} of ${all} mutants, ${coverage.flatMap(({ tests }) => tests).length} tests\n`);
  for (const { start: _, end: __, ...mutant } of mutants) {
    if (done.includes(mutant.id)) continue;
    writeFileSync(`${MUTATE_FOLDER}/now.json`, JSON.stringify(mutant));
    const plans = plansOf(mutant.id, coverage);
    const killer = await killerOf(mutant.id, bundle, plans);
    const missed = plans.length > 0 ? 'survived' : 'not reached';
    const state = killer ? 'killed' : missed;
    appendFileSync(RESULTS, `${JSON.stringify({ ...mutant, state, killer })}\n`);
    if (state !== 'killed')
      process.stdout.write(`${state}: ${mutant.file}:${mutant.line} ${mutant.before} → ${mutant.text}\n`);
  }
});
