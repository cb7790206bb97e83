import { buildLevel } from '../../geometry/level/build-level.ts';
import type { Plan } from '../../geometry/plan/model.ts';
import { levelRegion } from '../../geometry/region/level-region.ts';
import { marginField } from '../../geometry/search/field/margin-field.ts';
import { movedThings } from './edits.ts';
import { benchPlan, onlyLevel, PROBE } from './plans.ts';

/** Live bytes after a garbage collection. */
export interface MemoryFigures {
  /** The drawing only. */
  readonly plan: number;
  /** With rooms, zones, region, and all lists of the margin field. */
  readonly worked: number;
  /** The same after some edits, and after all of them: equal if there is no leak. */
  readonly early: number;
  readonly late: number;
  readonly earlyEdits: number;
  readonly lateEdits: number;
}

/** Measures the memory of the huge level. Throws without `node --expose-gc`. */
export function memoryFigures(lateEdits: number): MemoryFigures {
  const empty = liveBytes();
  let plan = benchPlan('huge');
  const drawn = liveBytes() - empty;
  workOut(plan);
  buildLists(plan);
  const worked = liveBytes() - empty;
  const earlyEdits = Math.ceil(lateEdits / 10);
  const next = movedThings(plan);
  const edit = (count: number) => {
    for (let i = 0; i < count; i++) {
      plan = next();
      workOut(plan);
    }
    buildLists(plan);
    return liveBytes() - empty;
  };
  const early = edit(earlyEdits);
  const late = edit(lateEdits - earlyEdits);
  // Used after the last measurement, so that it is alive until then.
  if (plan.levels.length !== 1) throw new Error('the plan lost its level');
  return { plan: drawn, worked, early, late, earlyEdits, lateEdits };
}

function workOut(plan: Plan) {
  return levelRegion(plan, buildLevel(onlyLevel(plan)), PROBE);
}

/** Queries a margin in every leaf of the level: lists are built on the first query. */
function buildLists(plan: Plan): void {
  const model = buildLevel(onlyLevel(plan));
  const field = marginField(plan, model, PROBE);
  for (const { centerRings } of model.rooms) {
    const [outer = []] = centerRings;
    const xs = outer.map(([x]) => x);
    const ys = outer.map(([, y]) => y);
    for (let x = Math.min(...xs); x <= Math.max(...xs); x += 150) {
      for (let y = Math.min(...ys); y <= Math.max(...ys); y += 150) field.margin(x, y);
    }
  }
}

/** Live bytes of the heap and of array buffers. */
function liveBytes(): number {
  if (!globalThis.gc) throw new Error('memory is measured with node --expose-gc');
  // Twice, because objects freed by the first pass may hold others.
  globalThis.gc();
  globalThis.gc();
  const { heapUsed, arrayBuffers } = process.memoryUsage();
  return heapUsed + arrayBuffers;
}
