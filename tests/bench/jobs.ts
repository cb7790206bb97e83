import { randomPlan } from '../helpers/random-level.ts';
import type { LevelSize, Size } from '../helpers/seeded-level.ts';
import { type MemoryFigures, memoryFigures } from './memory.ts';
import { benchPlan } from './plans.ts';
import { rivalOf } from './rivals/all.ts';
import { rowOf } from './rows.ts';
import { type Task, taskOf } from './task.ts';
import { type Effort, measure, type Samples } from './timing.ts';

/** Work for a separate process: a library may hang or crash. */
export type Job =
  | { readonly kind: 'rival'; readonly rival: string; readonly size: Size; readonly effort: Effort }
  | { readonly kind: 'ours'; readonly row: string; readonly size: Size | LevelSize; readonly effort: Effort }
  | { readonly kind: 'reference'; readonly size: Size }
  | { readonly kind: 'trial'; readonly rival: string; readonly seed: number; readonly count: number }
  | { readonly kind: 'memory'; readonly edits: number };

export interface RivalAnswer {
  readonly samples: Samples;
  /** Area, mm². */
  readonly area: number;
}

export interface AreaAnswer {
  /** Area by the engine, mm². */
  readonly ours: number;
  /** Area by GEOS with zones that it makes itself, mm². */
  readonly reference: number;
}

/** One random house, tried by one library. */
export interface TrialAnswer {
  readonly seed: number;
  /** Error of the library; null if it answered. */
  readonly threw: string | null;
  /** Error of the area as a share of the rooms' floor, positive if it is too large. */
  readonly off: number;
}

export type Answer = RivalAnswer | Samples | AreaAnswer | MemoryFigures;

/** Does a job. Trials answer one by one, so that a hang loses only one. */
export async function doJob(job: Job, tell: (answer: TrialAnswer | Answer) => void): Promise<void> {
  switch (job.kind) {
    case 'rival':
      return tell(await timeRival(job.rival, taskOf(benchPlan(job.size)), job.effort));
    case 'ours':
      return tell(rowOf(job.row).run(job.size, job.effort));
    case 'reference': {
      const task = taskOf(benchPlan(job.size));
      return tell({ ours: task.area, reference: await referenceOf(task) });
    }
    case 'memory':
      return tell(memoryFigures(job.edits));
    case 'trial':
      for (let seed = job.seed; seed < job.seed + job.count; seed++) tell(await tryRival(job.rival, seed));
  }
}

export async function timeRival(id: string, task: Task, effort: Effort): Promise<RivalAnswer> {
  const prepare = await rivalOf(id).load();
  const run = prepare(task);
  let area = Number.NaN;
  const samples = measure(
    effort,
    () => run,
    (measured) => {
      area = Math.abs(measured());
    },
  );
  return { samples, area };
}

/** Loads GEOS only when it is needed. */
async function referenceOf(task: Task): Promise<number> {
  const { referenceArea } = await import('./reference.ts');
  return referenceArea(task);
}

async function tryRival(id: string, seed: number): Promise<TrialAnswer> {
  const task = taskOf(randomPlan(seed));
  try {
    const area = id === OURS ? task.area : Math.abs((await rivalOf(id).load())(task)()());
    const off = task.floorArea > 0 ? (area - (await referenceOf(task))) / task.floorArea : 0;
    return { seed, threw: null, off };
  } catch (error) {
    return { seed, threw: error instanceof Error ? error.message : String(error), off: 0 };
  }
}

/** The engine among the libraries of a trial. */
export const OURS = 'stillspot';
