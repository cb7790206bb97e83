import { levelExtent } from '../../level/level-extent.ts';
import type { LevelModel } from '../../level/types.ts';
import type { Mm, Plan } from '../../plan/model.ts';
import type { Extent } from '../../plane/body.ts';
import type { Probe } from '../../region/types.ts';
import { type Assessment, assess, SINGLE, type Spread } from './assess.ts';
import { Candidates } from './candidates.ts';
import { Leaves } from './leaves.ts';
import { pieceMargin } from './piece-margin.ts';
import { type Limit, levelPrimitives, type Primitives } from './primitives.ts';
import { listAround, listOf, quartersOf, type Square, squaresIn } from './squares.ts';

/**
 * How much a probe has to spare at each point of a level: the least of measured − required over the distance rules of the
 * plan (in plan and in space), as `checkDetector` measures them. Not the room, the level, heights, sun and the pair. Changes
 * by at most as much as one moves. Positive infinity where no rule finds anything to measure.
 */
export interface MarginField {
  readonly probe: Probe;
  /** The margin with the axis at (x, y), mm; below −0.1 a check blocks. */
  margin(x: Mm, y: Mm): Mm;
  /** What leaves this margin; of several within a millionth of a mm the first rule of the profile, then the first id. Null for none. */
  limitedBy(x: Mm, y: Mm): Limit | null;
  /** The largest squares of the field's grid that meet a rectangle. */
  squares(extent: Extent): readonly Square[];
  /** The quarters of a square. */
  quarters(square: Square): readonly Square[];
  /** The margin at the middle of a square of level 0 or above. */
  middle(square: Square): Mm;
  /** No more than this is left at the middle of one of the largest squares, looked into only above `enough`: quicker than `middle`. */
  atMost(square: Square, enough: Mm): Mm;
  /** The field on some ground, as though some objects that carry the probe there were not in its way. It is right within the extent alone. */
  on(carriers: readonly string[], extent: Extent): MarginField;
  /** The same about any point, by the pieces near it. */
  around(x: Mm, y: Mm, reach: Mm, enough: Mm): Assessment;
  /** The margin at a point of a square and the most that can be had within `reach` of it, looked into only above `enough`. */
  assess(square: Square, x: Mm, y: Mm, reach: Mm, spread: Spread, enough: Mm): Assessment;
}

interface Known {
  readonly protocol: Plan['protocol'];
  readonly carriers: string;
  readonly field: MarginField;
}
const cache = new WeakMap<LevelModel, Known[]>();

/** Only the last few probes of a level are worth keeping: a height slider passes many. */
const KEPT = 4;

/**
 * The margin field of a level for a probe. The same protocol, model and probe give the same field. Its lists are built where
 * they are asked for, so that a field costs little until it is used everywhere. An object whose top is up to 3 mm above the probe's
 * underside is in the way of it all over: for places on it, name it among the carriers.
 *
 * @param carriers ids of objects that carry the probe and are not in its way
 */
export function marginField(
  plan: Plan,
  model: LevelModel,
  probe: Probe,
  carriers: readonly string[] = [],
): MarginField {
  let known = cache.get(model);
  if (!known) {
    known = [];
    cache.set(model, known);
  }
  const key = carriers.join(' ');
  const found = known.find(
    (one) => one.protocol === plan.protocol && one.carriers === key && sameProbe(one.field.probe, probe),
  );
  if (found) return found.field;
  const field = buildField(plan, model, probe, carriers);
  known.push({ protocol: plan.protocol, carriers: key, field });
  if (known.length > KEPT) known.shift();
  return field;
}

function sameProbe(a: Probe, b: Probe): boolean {
  return a.base === b.base && a.radius === b.radius && a.tall === b.tall;
}

/** Margins that differ by less, mm, are one: rounding. */
const SAME: Mm = 1e-6;

function buildField(
  plan: Plan,
  model: LevelModel,
  { base, radius, tall }: Probe,
  carriers: readonly string[],
): MarginField {
  const primitives = levelPrimitives(plan, model, { base, radius, tall }, carriers);
  const extent = levelExtent(model.level) ?? { minX: 0, minY: 0, maxX: 0, maxY: 0 };
  return fieldOf(primitives, extent, { base, radius, tall });
}

function fieldOf(primitives: Primitives, extent: Extent, probe: Probe): MarginField {
  const candidates = new Candidates(primitives, extent);
  const leaves = new Leaves(candidates);
  return {
    probe,
    on: (carriers, extent) => fieldOf(candidates.piecesOn(carriers, extent), extent, probe),
    margin: (x, y) => leaves.margin(x, y),
    limitedBy: (x, y) => firstWithin(primitives, leaves.margin(x, y) + SAME, x, y),
    squares: (extent) => squaresIn(candidates, extent),
    quarters: (square) => quartersOf(candidates, square),
    middle: ({ level, i, j }) => candidates.middles[candidates.square(level, i, j)] as Mm,
    atMost: ({ i, j }, enough) => candidates.atMost(i, j, enough),
    around: (x, y, reach, enough) => {
      const list = listAround(candidates, x, y, reach);
      if (list >= 0) return assess(candidates, list, x, y, reach, SINGLE, enough);
      const margin = leaves.margin(x, y);
      return { margin, upper: margin + reach, x, y };
    },
    assess: (square, x, y, reach, spread, enough) =>
      assess(candidates, listOf(candidates, square), x, y, reach, spread, enough),
  };
}

/** Of the limits that leave no more than a margin the first rule's first id; null for none. Goes through everything: for single points. */
function firstWithin(primitives: Primitives, most: Mm, x: Mm, y: Mm): Limit | null {
  const { count, owner, limits } = primitives;
  let first: Limit | null = null;
  for (let piece = 0; piece < count; piece++) {
    if (pieceMargin(primitives, piece, x, y) > most) continue;
    const limit = limits[owner[piece] as number] as Limit;
    if (!first || (limit.rule === first.rule && limit.subject < first.subject)) first = limit;
  }
  return first;
}
