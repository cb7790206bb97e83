import type { LevelModel } from '../level/types.ts';
import { levelExtent } from '../level-extent.ts';
import type { Mm, Plan } from '../plan/model.ts';
import type { Probe } from '../region/types.ts';
import { type Assessment, assess } from './assess.ts';
import { Candidates } from './candidates.ts';
import { Leaves } from './leaves.ts';
import { pieceMargin } from './piece-margin.ts';
import { type Limit, levelPrimitives } from './primitives.ts';

/**
 * How much a probe has to spare at each point of a level: the least of measured − required over the distance rules of the
 * plan (in plan and in space), as `checkDetector` measures them. Not the room, the level, heights, sun and the pair. Changes
 * by at most as much as one moves. Positive infinity where no rule finds anything to measure.
 */
export interface MarginField {
  readonly probe: Probe;
  /** The margin with the axis at (x, y), mm; below −0.1 a check blocks. */
  margin(x: Mm, y: Mm): Mm;
  /** What leaves this margin; of several within a millionth of a mm the first in the order of the profile. Null for none. */
  limitedBy(x: Mm, y: Mm): Limit | null;
  /** The margin at a point and the most that can be had within `reach` of it, looked into only above `enough`: see `Assessment`. */
  assess(x: Mm, y: Mm, reach: Mm, apart: Mm, enough: Mm): Assessment;
}

interface Known {
  readonly protocol: Plan['protocol'];
  readonly field: MarginField;
}
const cache = new WeakMap<LevelModel, Known[]>();

/** Only the last few probes of a level are worth keeping: a height slider passes many. */
const KEPT = 4;

/**
 * The margin field of a level for a probe. The same protocol, model and probe give the same field. Its lists are built where
 * they are asked for, so that a field costs little until it is used everywhere.
 */
export function marginField(plan: Plan, model: LevelModel, probe: Probe): MarginField {
  let known = cache.get(model);
  if (!known) {
    known = [];
    cache.set(model, known);
  }
  const found = known.find(({ protocol, field }) => protocol === plan.protocol && sameProbe(field.probe, probe));
  if (found) return found.field;
  const field = buildField(plan, model, probe);
  known.push({ protocol: plan.protocol, field });
  if (known.length > KEPT) known.shift();
  return field;
}

function sameProbe(a: Probe, b: Probe): boolean {
  return a.base === b.base && a.radius === b.radius && a.tall === b.tall;
}

/** Margins that differ by less, mm, are one: rounding. */
const SAME: Mm = 1e-6;

function buildField(plan: Plan, model: LevelModel, { base, radius, tall }: Probe): MarginField {
  const primitives = levelPrimitives(plan, model, { base, radius, tall });
  const extent = levelExtent(model.level) ?? { minX: 0, minY: 0, maxX: 0, maxY: 0 };
  const candidates = new Candidates(primitives, extent);
  const leaves = new Leaves(candidates);
  return {
    probe: { base, radius, tall },
    margin: (x, y) => leaves.margin(x, y),
    limitedBy: (x, y) => {
      const least = leaves.margin(x, y) + SAME;
      let first = primitives.limits.length;
      const square = candidates.at(0, x, y);
      for (let n = candidates.starts[square] as number; n < (candidates.ends[square] as number); n++) {
        const piece = candidates.pool[n] as number;
        if (pieceMargin(primitives, piece, x, y) > least) continue;
        first = Math.min(first, primitives.owner[piece] as number);
      }
      return primitives.limits[first] ?? null;
    },
    assess: (x, y, reach, apart, enough) => {
      const square = candidates.at(candidates.levelOf(reach * Math.SQRT2), x, y);
      return assess(candidates, square, x, y, reach, apart, enough);
    },
  };
}
