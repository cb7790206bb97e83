import type { Check, DetectorReport } from '../../geometry/check/types.ts';
import type { LevelModel } from '../../geometry/level/types.ts';
import type { Detector, Mm, Plan, XY } from '../../geometry/plan/model.ts';
import type { NearestSpot } from '../../geometry/region/types.ts';
import { formatLength } from '../../geometry/units.ts';
import { describeMove } from '../../geometry/words.ts';
import { checkDetector, levelRegion, nearestSpot } from '../engine.ts';

/** One press that makes a detector's verdict better, and what it says on it. */
export type WayOut =
  | { readonly kind: 'move'; readonly words: string; readonly at: XY; readonly spare: boolean }
  | { readonly kind: 'height'; readonly words: string; readonly base: Mm }
  | { readonly kind: 'name-room'; readonly words: string; readonly at: XY };

const NONE: readonly WayOut[] = [];
const known = new WeakMap<DetectorReport, readonly WayOut[]>();

/**
 * What would help a detector that is not clear: another height, a name for its room, the nearest valid spot, the nearest one with
 * more to spare than the tape may be off. A way is only offered when the check of that very spot agrees.
 * Empty for a clear detector, and where nothing on the level helps.
 */
export function waysOut(plan: Plan, model: LevelModel, detector: Detector, report: DetectorReport): readonly WayOut[] {
  if (report.verdict === 'clear') return NONE;
  const found = known.get(report);
  if (found) return found;
  const ways = search(plan, model, detector, report);
  known.set(report, ways);
  return ways;
}

function search(plan: Plan, model: LevelModel, detector: Detector, report: DetectorReport): readonly WayOut[] {
  const height = heightWay(plan, model, detector, report);
  if (height) return [height];
  if (report.checks.some(({ rule, verdict }) => rule === 'room-use' && verdict === 'unknown')) {
    return [{ kind: 'name-room', words: 'Say what this room is used for', at: detector.at }];
  }
  const near = report.verdict === 'blocked' ? moveWay(plan, model, detector, report, JUST_INSIDE) : null;
  const spare = moveWay(plan, model, detector, report, plan.tapeTolerance);
  // With a tape that is never off both are the same spot.
  return [near, spare].filter(
    (way, index, ways) => way !== null && (index === 0 || ways[0]?.words !== way.words),
  ) as WayOut[];
}

/** Up to the least height or down to the greatest, where that is all that is wrong with the height. */
function heightWay(plan: Plan, model: LevelModel, detector: Detector, report: DetectorReport): WayOut | null {
  const worst = report.checks.find((check) => isHeight(check) && check.verdict === 'blocked');
  if (!worst || worst.margin === null) return null;
  const up = worst.rule === 'height-band' && worst.bound === 'least';
  const base = up ? detector.base - worst.margin : detector.base + worst.margin;
  const moved = checkDetector(plan, model, { ...detector, base });
  if (moved.checks.some((check) => isHeight(check) && check.verdict === 'blocked')) return null;
  const by = formatLength(-worst.margin, plan.display.length, 'up');
  return { kind: 'height', words: `${up ? 'Raise' : 'Lower'} it ${by}`, base };
}

function isHeight({ rule }: Check): boolean {
  return rule === 'height-band' || rule === 'ceiling';
}

/** A spot on the very edge may fall either way in the last digit of a double; this much inside, it does not. Mm. */
const JUST_INSIDE = 0.2;

/** @param spare mm beyond every limit */
function moveWay(plan: Plan, model: LevelModel, detector: Detector, report: DetectorReport, spare: Mm): WayOut | null {
  const { base, radius, tall, at } = detector;
  const region = levelRegion(plan, model, { base, radius, tall }, { spare });
  const spot: NearestSpot | null = nearestSpot(region, at);
  if (!spot) return null;
  const moved = checkDetector(plan, model, { ...detector, at: spot.at });
  if (RANK[moved.verdict] <= RANK[report.verdict]) return null;
  const words = describeMove({ ...spot, distance: spot.distance - JUST_INSIDE }, at, report.room, plan, model).replace(
    /\.$/,
    '',
  );
  if (spare === JUST_INSIDE) return { kind: 'move', words, at: spot.at, spare: false };
  return { kind: 'move', words: `${words}, with tape to spare`, at: spot.at, spare: true };
}

const RANK = { blocked: 0, unknown: 1, tight: 2, clear: 3 } as const;
