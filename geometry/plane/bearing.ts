import type { Deg, XY } from './types.ts';

/** Returns an angle as 0 (included) to 360 (not included) degrees. */
export const fullTurn = (degrees: Deg): Deg => ((degrees % 360) + 360) % 360;

/** Returns the direction from one point to another, clockwise on screen from +x: 0 (included) to 360; 0 if they coincide. */
export function direction([ax, ay]: XY, [bx, by]: XY): Deg {
  const turn = (Math.atan2(by - ay, bx - ax) * 180) / Math.PI;
  return turn > 0 ? turn : fullTurn(turn);
}

/** Returns the direction from one point to another, clockwise from straight up the page: 0 (included) to 360; 0 if they coincide. */
export function bearing([ax, ay]: XY, [bx, by]: XY): Deg {
  return ax === bx && ay === by ? 0 : fullTurn((Math.atan2(bx - ax, ay - by) * 180) / Math.PI);
}

/** Returns the point at a distance from another one in a direction clockwise from straight up the page. */
export function atBearing([x, y]: XY, degrees: Deg, distance: number): XY {
  const angle = (degrees * Math.PI) / 180;
  return [x + Math.sin(angle) * distance, y - Math.cos(angle) * distance];
}
