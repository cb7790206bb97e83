import { ruleSubjects } from '../../check/rule-subjects.ts';
import type { Subject } from '../../check/subjects.ts';
import { levelExtent } from '../../level/level-extent.ts';
import type { LevelModel } from '../../level/types.ts';
import type { Mm, Plan } from '../../plan/model.ts';
import type { Extent } from '../../plane/extent.ts';
import type { Probe } from '../../region/types.ts';
import { effectiveRules } from '../../rules/profiles.ts';
import type { RuleId } from '../../rules/types.ts';
import { type Assessment, assess, SINGLE_POINT, type Spread } from './assess.ts';
import { Candidates } from './candidates.ts';
import { Leaves } from './leaves.ts';
import { pieceMargin } from './piece-margin.ts';
import { type Limit, levelPrimitives, type Primitives } from './primitives.ts';
import { listAround, listOf, quartersOf, type Square, squaresIn } from './squares.ts';

/**
 * The margin of a probe at each point of a level: the least of measured − required over the distance rules of the
 * plan (in plan and in space), as `checkDetector` measures them. Without the rules on room, level, heights and pair, and
 * without sun that is not computed. 1-Lipschitz. Positive infinity if no rule has anything to measure.
 */
export interface MarginField {
  readonly probe: Probe;
  /** The margin with the axis at (x, y), mm; below −0.1 a check blocks. */
  margin(x: Mm, y: Mm): Mm;
  /**
   * What determines the margin; of several within 1e-6 mm the first rule of the profile, then the first id. Null for
   * none.
   */
  limitedBy(x: Mm, y: Mm): Limit | null;
  /** The largest squares of the field's grid that meet a rectangle. */
  squares(extent: Extent): readonly Square[];
  /** The quarters of a square. */
  quarters(square: Square): readonly Square[];
  /** The margin at the middle of a square of level 0 or above. */
  middle(square: Square): Mm;
  /**
   * Upper bound of the margin at the middle of one of the largest squares, not necessarily tight at or below `enough`:
   * faster than `middle`.
   */
  upperBound(square: Square, enough: Mm): Mm;
  /** The field without some objects that support the probe within the extent. Valid within the extent only. */
  on(carriers: readonly string[], extent: Extent): MarginField;
  /** Same as `assess` for any point, from the pieces near it. */
  around(x: Mm, y: Mm, reach: Mm, enough: Mm): Assessment;
  /**
   * The margin at a point of a square and an upper bound within `reach` of it, not necessarily tight at or below
   * `enough`.
   */
  assess(square: Square, x: Mm, y: Mm, reach: Mm, spread: Spread, enough: Mm): Assessment;
}

interface Known {
  readonly protocol: Plan['protocol'];
  /** The swept areas, by identity. */
  readonly sun: readonly (readonly Subject[])[];
  readonly carriers: string;
  readonly field: MarginField;
}
const cache = new WeakMap<LevelModel, Known[]>();

/** Number of fields cached per level: moving a height slider requests many heights. */
const MOST_CACHED = 4;

/**
 * Returns the margin field of a level for a probe, cached by protocol, model, direct sun and probe. Lists are built on first use,
 * so a field costs little until it is queried everywhere. An object whose top is up to 3 mm above the probe's
 * base obstructs it everywhere; for positions on it, list it in `carriers`.
 *
 * @param carriers ids of objects that support the probe and do not obstruct it
 */
export function marginField(
  plan: Plan,
  model: LevelModel,
  probe: Probe,
  carriers: readonly string[] = [],
): MarginField {
  let cached = cache.get(model);
  if (!cached) {
    cached = [];
    cache.set(model, cached);
  }
  const key = carriers.join(' ');
  const sun = effectiveRules(plan.protocol)
    .filter(({ subject }) => subject.of === 'sun')
    .map((rule) => ruleSubjects(plan, model, rule, probe));
  const found = cached.find(
    (one) =>
      one.protocol === plan.protocol &&
      one.carriers === key &&
      sameProbe(one.field.probe, probe) &&
      one.sun.every((subjects, i) => subjects === sun[i]),
  );
  if (found) return found.field;
  const field = buildField(plan, model, probe, carriers);
  cached.push({ protocol: plan.protocol, sun, carriers: key, field });
  if (cached.length > MOST_CACHED) cached.shift();
  return field;
}

function sameProbe(a: Probe, b: Probe): boolean {
  return a.base === b.base && a.radius === b.radius && a.tall === b.tall;
}

/** Margins that differ by less are equal, mm: rounding. */
const SAME_MARGIN: Mm = 1e-6;

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
  const largest = new Map<number, Square>();
  return {
    probe,
    on: (carriers, extent) => fieldOf(candidates.piecesOn(carriers, extent), extent, probe),
    margin: (x, y) => leaves.margin(x, y),
    limitedBy: (x, y) => firstWithin(primitives, leaves.margin(x, y) + SAME_MARGIN, x, y),
    squares: (extent) => squaresIn(candidates, extent, largest),
    quarters: (square) => quartersOf(candidates, square),
    middle: ({ level, i, j }) => candidates.middles[candidates.square(level, i, j)] as Mm,
    upperBound: ({ i, j }, enough) => candidates.upperBound(i, j, enough),
    around: (x, y, reach, enough) => {
      const list = listAround(candidates, x, y, reach);
      if (list >= 0) return assess(candidates, list, x, y, reach, SINGLE_POINT, enough);
      const margin = leaves.margin(x, y);
      return { margin, upper: margin + reach, x, y };
    },
    assess: (square, x, y, reach, spread, enough) =>
      assess(candidates, listOf(candidates, square), x, y, reach, spread, enough),
  };
}

/**
 * Returns the first rule's first id among the limits with at most a margin; null for none. Linear scan, for single
 * points.
 */
function firstWithin(primitives: Primitives, most: Mm, x: Mm, y: Mm): Limit | null {
  const { count, owner, rules, subjects } = primitives;
  let rule: RuleId | null = null;
  let first: Subject | null = null;
  for (let piece = 0; piece < count; piece++) {
    if (pieceMargin(primitives, piece, x, y) > most) continue;
    const limit = owner[piece] as number;
    const subject = subjects[limit] as Subject;
    if (first && (rules[limit] !== rule || subject.id >= first.id)) continue;
    rule = rules[limit] as RuleId;
    first = subject;
  }
  return rule && first && { rule, subject: first.id, stream: first.keepOut };
}
