import { SIZES, type Size } from '../helpers/seeded-level.ts';
import { fitted, type Growth } from './growth.ts';
import { type AreaAnswer, type Job, OURS, type RivalAnswer, type TrialAnswer } from './jobs.ts';
import type { MemoryFigures } from './memory.ts';
import { sizeOf } from './plans.ts';
import { RIVALS } from './rivals/all.ts';
import { ROWS, type Row, rowOf } from './rows.ts';
import { inChild } from './spawn.ts';
import { type Effort, noSamples, type Samples, summarize } from './timing.ts';

/** The extent of a run. */
export interface Scope {
  /** Every library and every row is timed once in each round, in turn, so that a slow minute of the machine affects all of them. */
  readonly rounds: number;
  readonly effort: Omit<Effort, 'times'>;
  /** Most repeats of a library in a round. */
  readonly times: number;
  /** Factors of time and repeats of the engine's own rows, whose upper percentiles are reported too. */
  readonly own: { readonly patience: number; readonly share: number };
  /** Levels that the libraries are timed on; the engine is timed on all three. */
  readonly rivalSizes: readonly Size[];
  readonly limitMs: number;
  readonly trials: number;
  readonly growth: readonly number[];
  readonly edits: number;
}

export const FULL: Scope = {
  rounds: 3,
  effort: { warmUpMs: 2000, measureMs: 2000 },
  times: 100,
  own: { patience: 4, share: 1 },
  rivalSizes: ['house', 'large', 'huge'],
  limitMs: 60_000,
  trials: 100,
  growth: [50, 100, 200, 400, 1000, 2500, 5000],
  edits: 10_000,
};

export const QUICK: Scope = {
  rounds: 1,
  effort: { warmUpMs: 100, measureMs: 100, brief: true },
  times: 10,
  own: { patience: 2, share: 0.2 },
  rivalSizes: ['house', 'large'],
  limitMs: 3000,
  trials: 3,
  growth: [50, 400, 2500],
  edits: 200,
};

/** The result of one library on one level. */
export interface RivalResult {
  readonly samples: Samples;
  readonly area: number;
  /** Why it did not answer; null if it did. */
  readonly failure: string | null;
}

interface TrialResult {
  readonly tried: number;
  readonly threw: number;
  readonly hung: number;
  /** Number of areas off by more than half a percent of the floor. */
  readonly wrong: number;
  /** The largest error of an area, as a share of the floor. */
  readonly worst: number;
}

/** All figures of a run. Keys: the id of a library or a row, then the size. */
export interface Results {
  readonly rivals: ReadonlyMap<string, RivalResult>;
  readonly rows: ReadonlyMap<string, Samples>;
  readonly areas: ReadonlyMap<Size, AreaAnswer>;
  readonly trials: ReadonlyMap<string, TrialResult>;
  readonly growth: readonly Growth[];
  readonly memory: MemoryFigures;
}

export const keyOf = (id: string, size: Size) => `${id} ${size}`;

/** Runs only some rows of the engine. */
export function conductRows(scope: Scope, child: string, ids: readonly string[]): ReadonlyMap<string, Samples> {
  const rows = new Map<string, Samples>();
  for (let round = 1; round <= scope.rounds; round++) {
    for (const row of ids.map(rowOf)) {
      for (const size of row.sizes) {
        const { answers, failure } = inChild<Samples>(child, ours(scope, row.id, size), scope.limitMs * 3);
        if (failure !== null || answers[0] === undefined) throw new Error(`${row.id}: ${failure}`);
        addSamples(rows, keyOf(row.id, size), answers[0]);
      }
    }
  }
  return rows;
}

/** Runs all measurements, one process at a time. `say` receives the progress. */
export function conduct(scope: Scope, child: string, say: (line: string) => void): Results {
  const ask = <T>(job: Job): T => {
    const { answers, failure } = inChild<T>(child, job, scope.limitMs * 3);
    if (failure !== null || answers[0] === undefined) throw new Error(`${JSON.stringify(job)}: ${failure}`);
    return answers[0];
  };
  const rivals = new Map<string, RivalResult>();
  const rows = new Map<string, Samples>();
  for (let round = 1; round <= scope.rounds; round++) {
    say(`round ${round} of ${scope.rounds}: the libraries`);
    for (const size of scope.rivalSizes) timeRivals(scope, child, size, rivals, rows, ask);
    say(`round ${round} of ${scope.rounds}: the engine`);
    for (const row of ROWS) {
      if (row.id === BESIDE) continue;
      for (const size of row.sizes) {
        // Each sample of a first time needs a new process.
        const { times } = row.isFirst ? effortOf(scope, row) : { times: 1 };
        for (let i = 0; i < times; i++) addSamples(rows, keyOf(row.id, size), ask<Samples>(ours(scope, row.id, size)));
      }
    }
  }
  say('areas');
  const sizes = scope.rivalSizes.map((size) => [size, ask<AreaAnswer>({ kind: 'reference', size })] as const);
  say('random houses');
  const trials = [OURS, ...RIVALS.map(({ id }) => id)].map((id) => [id, tryOut(scope, child, id)] as const);
  say('growth');
  const growth = growthOf(scope, ask);
  say('memory');
  const memory = ask<MemoryFigures>({ kind: 'memory', edits: scope.edits });
  return { rivals, rows, areas: new Map(sizes), trials: new Map(trials), growth, memory };
}

/** The row of the engine that is compared with the libraries. */
export const BESIDE = 'rooms-ready';

function timeRivals(
  scope: Scope,
  child: string,
  size: Size,
  rivals: Map<string, RivalResult>,
  rows: Map<string, Samples>,
  ask: <T>(job: Job) => T,
): void {
  addSamples(rows, keyOf(BESIDE, size), ask<Samples>(ours(scope, BESIDE, size)));
  for (const { id } of RIVALS) {
    const key = keyOf(id, size);
    const known = rivals.get(key) ?? { samples: noSamples(), area: Number.NaN, failure: null };
    // A library that failed once is not run again.
    if (known.failure !== null) continue;
    const effort = { ...scope.effort, times: scope.times };
    const { answers, failure } = inChild<RivalAnswer>(child, { kind: 'rival', rival: id, size, effort }, scope.limitMs);
    const [answer] = answers;
    if (answer) append(known.samples, answer.samples);
    rivals.set(key, { samples: known.samples, area: answer?.area ?? known.area, failure });
  }
}

function ours(scope: Scope, row: string, size: Size | ReturnType<typeof sizeOf>): Job {
  return { kind: 'ours', row, size, effort: effortOf(scope, rowOf(row)) };
}

function effortOf({ own: { patience, share }, effort }: Scope, { times }: Row): Effort {
  return { ...effort, measureMs: effort.measureMs * patience, times: Math.ceil(times * share) };
}

function tryOut(scope: Scope, child: string, rival: string): TrialResult {
  const answers: TrialAnswer[] = [];
  let hung = 0;
  for (let seed = 1; seed <= scope.trials; ) {
    const job = { kind: 'trial' as const, rival, seed, count: Math.min(BATCH, scope.trials - seed + 1) };
    const outcome = inChild<TrialAnswer>(child, job, scope.limitMs);
    answers.push(...outcome.answers);
    seed += outcome.answers.length;
    // The house that it hung on is skipped.
    if (outcome.failure !== null && outcome.answers.length < job.count) {
      hung++;
      seed++;
    }
  }
  const answered = answers.filter(({ threw }) => threw === null);
  return {
    tried: scope.trials,
    threw: answers.length - answered.length,
    hung,
    wrong: answered.filter(({ off }) => Math.abs(off) > WRONG).length,
    worst: answered.reduce((worst, { off }) => (Math.abs(off) > Math.abs(worst) ? off : worst), 0),
  };
}

/** Random houses per process: so few that the time limit is reached only if one hangs. */
const BATCH = 10;

/** Error of an area, as a share of the floor, that rounding of zones does not explain. */
const WRONG = 0.005;

function growthOf(scope: Scope, ask: <T>(job: Job) => T): Growth[] {
  const curve = (name: string, row: string) =>
    fitted(
      name,
      scope.growth.map((features) => {
        const { wall } = ask<Samples>(ours(scope, row, sizeOf(features)));
        return { features, ms: summarize(wall).median };
      }),
    );
  return [curve('region from the drawing', 'scratch'), curve('after one thing moved', 'moved')];
}

function addSamples(rows: Map<string, Samples>, key: string, more: Samples): void {
  const known = rows.get(key) ?? noSamples();
  rows.set(key, known);
  append(known, more);
}

function append(samples: Samples, { wall, cpu }: Samples): void {
  samples.wall.push(...wall);
  samples.cpu.push(...cpu);
}

export const sizeInWords = (size: Size) =>
  `${size}: ${SIZES[size].rooms} rooms, ${SIZES[size].features.toLocaleString('en-US')} features`;
