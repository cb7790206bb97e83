/** Distances from a detector to the walls, for finding its place again with a tape. */
import { endsAtSlant, nearGaps, type Side } from '../../geometry/dimension/wall-gaps.ts';
import type { LevelModel } from '../../geometry/level/types.ts';
import { ALONG_PAGE, capital } from '../../geometry/messages/index.ts';
import { compassPoint } from '../../geometry/messages/subject.ts';
import type { Detector, Plan } from '../../geometry/plan/model.ts';
import type { Line } from '../../geometry/plane/types.ts';
import { TOUCHING } from '../../geometry/snap/room-faces.ts';
import { formatMeasured } from '../../geometry/units/index.ts';

/** Degrees on the page, clockwise from +x. */
const DIRECTION: Readonly<Record<Side, number>> = { right: 0, down: 90, left: 180, up: 270 };

interface TapeDistance {
  readonly side: Side;
  /** Line from the rim to the face of the wall. */
  readonly line: Line;
  /** "9 ft 10 in". */
  readonly length: string;
  /** Whether the wall is slanted, so that a tape held square to it reads less. */
  readonly toSlant: boolean;
}

/** Returns the distance to the nearer wall across the page and down it; none to a wall that the detector touches. */
export function tapeDistances({ display }: Plan, model: LevelModel, { at, radius }: Detector): readonly TapeDistance[] {
  const reach = { left: radius, right: radius, up: radius, down: radius };
  return nearGaps(model, at, reach)
    .filter(({ gap }) => gap > TOUCHING)
    .map(({ side, line, gap }) => ({
      side,
      line,
      length: formatMeasured(gap, display.length),
      toSlant: endsAtSlant(model, at, { side }),
    }));
}

/** Returns "West wall 9 ft 10 in, north wall 11 ft 8 in", with the direction of the tape where a wall is slanted; empty where no wall is near. */
export function tapeWords(plan: Plan, model: LevelModel, detector: Detector): string {
  const gaps = tapeDistances(plan, model, detector).map(
    ({ side, length, toSlant }) =>
      `${compassPoint(DIRECTION[side], plan.site)} wall ${length}${toSlant ? ` (${ALONG_PAGE[side]})` : ''}`,
  );
  return capital(gaps.join(', '));
}
