import type { Check, DetectorReport } from '../../geometry/check/types.ts';
import type { LevelModel } from '../../geometry/level/types.ts';
import type { Detector, Mm, Plan, XY } from '../../geometry/plan/model.ts';
import type { NearestSpot } from '../../geometry/region/types.ts';
import { formatLength } from '../../geometry/units.ts';
import { capital, describeMove } from '../../geometry/words.ts';
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
  const height = heightWay(plan, detector, report);
  if (height) return [height];
  const unnamed = report.checks.some(({ rule, verdict }) => rule === 'room-use' && verdict === 'unknown');
  if (unnamed) {
    return [{ kind: 'name-room', words: 'Say what this room is used for', at: detector.at }];
  }
  const blocked = report.verdict === 'blocked';
  const near = blocked ? moveWay(plan, model, detector, report, 0) : null;
  const spare = moveWay(plan, model, detector, report, plan.tapeTolerance);
  return [near, spare].filter((way) => way !== null);
}

function heightWay(plan: Plan, detector: Detector, report: DetectorReport): WayOut | null {
  const check = report.checks.find(
    ({ rule, verdict }) => (rule === 'height-band' || rule === 'ceiling') && verdict === 'blocked',
  );
  if (!check || check.margin === null) return null;
  const by = -check.margin;
  const up = check.rule === 'height-band' && check.bound === 'least';
  const base = detector.base + (up ? by : -by);
  if (base < 0) return null;
  const moved = checkDetector(plan, modelOf(plan, report.id) ?? null, { ...detector, base });
  const words = `${up ? 'Raise' : 'Lower'} it ${formatLength(by, plan.display.length, 'up')}`;
  return moved && stillFails(moved.checks, check) ? null : { kind: 'height', words, base };
}
