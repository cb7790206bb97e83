import { pointToward } from '../../../geometry/edit/draw-walls.ts';
import type { Deg, Mm, XY } from '../../../geometry/plan/model.ts';
import { distance } from '../../../geometry/plane/point.ts';
import { parseTurn } from '../../../geometry/units/parse-turn.ts';
import { ARROWS } from '../keys.ts';
import { useSketch } from '../sketch.ts';

/** A wall that is aimed without a length is shown this long, mm. */
const SHOWN: Mm = 1000;

/** Where the next wall goes when no pointer shows it: by the arrow that was pressed last. */
export interface Aim {
  /** Takes an arrow key; false when it is none. The keyboard's cross then leads from the last corner. */
  arrow(event: KeyboardEvent, corner: XY, reach: Mm): boolean;
  /** A point that the wall goes towards, from the last of the corners; null while nothing shows the direction. */
  toward(corners: readonly XY[], pointed: XY | null): XY | null;
  /** Whether an arrow leads. */
  readonly led: () => boolean;
  drop(): void;
}

export function createAim(): Aim {
  let heading: XY | null = null;
  return {
    arrow: (event, corner, reach) => {
      const step = ARROWS[event.key];
      if (!step) return false;
      const { cross } = useSketch.getState();
      const same = heading !== null && heading[0] === step[0] && heading[1] === step[1];
      // A cross that was led away from the corner shows the direction itself.
      const near = !cross || same || distance(cross, corner) <= reach;
      if (near && !(same && cross)) useSketch.setState({ cross: corner });
      heading = near ? step : null;
      return true;
    },
    toward: (corners, pointed) => {
      const from = corners.at(-1);
      if (!from) return null;
      const turn = parseTurn(useSketch.getState().turn ?? '');
      if (turn.ok) return inDirection(from, directionBefore(corners) + turn.deg);
      if (heading) return [from[0] + heading[0] * SHOWN, from[1] + heading[1] * SHOWN];
      return pointed && distance(from, pointed) >= 1 ? pointed : null;
    },
    led: () => heading !== null,
    drop: () => {
      heading = null;
    },
  };
}

/** Of the wall before the last corner; along the page to the right where there is none. Degrees. */
function directionBefore(corners: readonly XY[]): Deg {
  const [a, b] = corners.slice(-2);
  return a && b ? (Math.atan2(b[1] - a[1], b[0] - a[0]) * 180) / Math.PI : 0;
}

function inDirection(from: XY, direction: Deg): XY {
  const radians = (direction * Math.PI) / 180;
  return pointToward(from, [from[0] + Math.cos(radians), from[1] + Math.sin(radians)], SHOWN);
}
