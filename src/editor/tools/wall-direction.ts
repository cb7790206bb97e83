import { pointToward } from '../../../geometry/edit/draw-walls.ts';
import type { Deg, Mm, XY } from '../../../geometry/plan/model.ts';
import { direction, fullTurn } from '../../../geometry/plane/bearing.ts';
import { distance } from '../../../geometry/plane/point.ts';
import { parseTurn } from '../../../geometry/units/parse-turn.ts';
import { ARROWS } from '../input/sheet-keys.ts';
import { putCross, useSketch } from '../overlay/sketch.ts';

/** Length at which a wall is shown that has a direction but no length yet, mm. */
const SHOWN: Mm = 1000;

/** The direction of the next wall when no pointer shows it: that of the last arrow key. */
export interface WallDirection {
  /** Takes an arrow key; the keyboard's cross then starts from the last corner. Returns false for another key. */
  arrow(event: KeyboardEvent, corner: XY, reach: Mm): boolean;
  /** Returns a point in the direction of the wall from the last corner; null while nothing shows the direction. */
  toward(corners: readonly XY[], pointed: XY | null): XY | null;
  /** Whether an arrow key gives the direction. */
  readonly byArrow: () => boolean;
  reset(): void;
}

export function createWallDirection(): WallDirection {
  let heading: XY | null = null;
  return {
    arrow: (event, corner, reach) => {
      const step = ARROWS[event.key];
      if (!step) return false;
      const { cross } = useSketch.getState();
      const same = heading !== null && heading[0] === step[0] && heading[1] === step[1];
      // A cross that was moved away from the corner shows the direction itself.
      const near = !cross || same || distance(cross, corner) <= reach;
      if (near && !(same && cross)) putCross(corner);
      heading = near ? step : null;
      return true;
    },
    toward: (corners, pointed) => {
      const from = corners.at(-1);
      if (!from) return null;
      const turn = parseTurn(useSketch.getState().turn ?? '');
      if (turn.ok) return inDirection(from, fullTurn(directionBefore(corners) + turn.deg));
      if (heading) return [from[0] + heading[0] * SHOWN, from[1] + heading[1] * SHOWN];
      return pointed && distance(from, pointed) >= 1 ? pointed : null;
    },
    byArrow: () => heading !== null,
    reset: () => {
      heading = null;
    },
  };
}

/** Direction of the wall before the last corner, degrees; 0, to the right, if there is none. */
function directionBefore(corners: readonly XY[]): Deg {
  const [a, b] = corners.slice(-2);
  return a && b ? direction(a, b) : 0;
}

function inDirection(from: XY, direction: Deg): XY {
  const radians = (direction * Math.PI) / 180;
  return pointToward(from, [from[0] + Math.cos(radians), from[1] + Math.sin(radians)], SHOWN);
}
