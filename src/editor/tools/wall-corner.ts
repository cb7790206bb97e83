import { buttPosition, cornerAngle } from '../../../geometry/edit/draw-walls.ts';
import { beyondTape } from '../../../geometry/edit/run-on-walls.ts';
import { type TypedEnd, tapedLength, typedWallEnd } from '../../../geometry/edit/wall-run.ts';
import { TAPED_BY_WORDS } from '../../../geometry/messages/taped-by.ts';
import type { Deg, Mm, XY } from '../../../geometry/plan/model.ts';
import { direction } from '../../../geometry/plane/bearing.ts';
import { distance, nearestOnSegment } from '../../../geometry/plane/point.ts';
import type { Line } from '../../../geometry/plane/types.ts';
import { wallAt } from '../../../geometry/snap/opening-fit.ts';
import { RIGHT_ANGLES, type Snapped, snapPoint } from '../../../geometry/snap/snap-point.ts';
import { formatMeasured } from '../../../geometry/units/index.ts';
import { selectModel } from '../../state/selectors.ts';
import { thicknessFrom } from '../../state/wall-chain.ts';
import { currentLevel, gridFor, store, targets } from './tool-context.ts';
import type { ToolPoint } from './tool-controller.ts';

/** The place of a corner; for one on a standing wall also the lines by which it is taped. */
export type Corner = Snapped & { readonly taped?: readonly Line[] };

/** The corners of the walls that are being drawn. */
export const corners = (): readonly XY[] => store().chain.corners;

/** Returns the place of the next corner with the pointer at `point`: on the start of the chain, else snapped to what is drawn there. */
export function cornerAt(point: ToolPoint): Corner {
  const points = corners();
  const free: Snapped = { at: point.plan, hold: 'none', guides: [] };
  const [start] = points;
  if (start && points.length > 2 && distance(start, point.plan) <= point.reach)
    return { ...free, at: start, hold: 'end' };
  if (point.free) return free;
  const found = targets();
  const snapped = snapPoint(
    point.plan,
    { ...found, ends: [...found.ends, ...points] },
    { reach: reachOf(point), grid: gridFor(point), from: points.at(-1) ?? null, directions: directionsAfter(points) },
  );
  if (snapped.hold !== 'wall' || start) return snapped;
  const model = selectModel(store());
  const thickness = thicknessFrom(model, snapped.at, store().wallSettings);
  const butt = buttPosition(model.level, model, snapped.at, point.plan, thickness, gridFor(point));
  return butt ? { ...snapped, ...butt } : snapped;
}

/** Reach of a press, mm. On a wall or close to its face it extends to the center-line of the wall. */
function reachOf({ plan, reach }: ToolPoint): Mm {
  const place = wallAt(currentLevel(), plan, reach);
  if (!place) return reach;
  const { from, to } = place.wall;
  return Math.max(reach, distance(plan, nearestOnSegment(plan, from, to)) + ON_IT);
}

/** Added to the distance of the center-line, mm, so that rounding does not matter. */
const ON_IT: Mm = 1;

/** Right angles of the page, and to the wall before, since a building may be at an angle on the page. */
function directionsAfter(points: readonly XY[]): readonly Deg[] {
  const [a, b] = points.slice(-2);
  if (!a || !b) return RIGHT_ANGLES;
  const turn = direction(a, b);
  return [...RIGHT_ANGLES, turn, turn + 90];
}

/**
 * Returns the end of a wall from the last of these corners toward a point, taped `mm` long. If it is within the tape's tolerance of a
 * standing wall, it ends on that wall.
 */
export function typedEnd(points: readonly XY[], toward: XY, mm: Mm): TypedEnd {
  const { plan, wallSettings } = store();
  const from = points.at(-1) ?? toward;
  return typedWallEnd(
    currentLevel(),
    from,
    toward,
    mm,
    wallSettings.by,
    plan.tapeTolerance,
    moreThanTape(points, toward),
  );
}

/** How much longer the next wall is than `typedWallEnd` alone would make it, mm; 0 after the second wall of a chain. */
function moreThanTape(points: readonly XY[], toward: XY): Mm {
  const [start] = points;
  const { wallSettings } = store();
  if (!start || points.length > 2) return 0;
  const thickness = thicknessFrom(selectModel(store()), start, wallSettings);
  return beyondTape(currentLevel(), points, toward, thickness, wallSettings.by);
}

/** Returns the length and the angle of the next wall, in words. */
export function wallReadings(points: readonly XY[], next: XY): readonly string[] {
  const from = points.at(-1);
  if (!from || distance(from, next) < 1) return [];
  const line: Line = [from, next];
  const { by } = store().wallSettings;
  const taped = formatMeasured(
    tapedLength(currentLevel(), line, by, moreThanTape(points, next)),
    store().plan.display.length,
  );
  const length = `${taped} ${TAPED_BY_WORDS[by]}`;
  const before = points.at(-2);
  if (!before) return [length, 'or type the length'];
  return [length, `${Math.round(cornerAngle(before, from, next))}° to the wall before`];
}
