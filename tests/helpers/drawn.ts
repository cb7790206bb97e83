import type { Detector, Level, Plan, Wall, XY } from '../../geometry/plan/model.ts';
import { emptyLevel, emptyPlan } from '../../geometry/planfile/empty.ts';

/** Returns a wall, 200 mm thick by default. */
export function wall(id: string, from: XY, to: XY, rest: Partial<Wall> = {}): Wall {
  return { id, from, to, thickness: 200, side: 'auto', ...rest };
}

/** Returns the walls of a closed polygon, with ids `a1`, `a2`, … for the prefix `a`. */
export function loop(prefix: string, corners: readonly XY[], rest: Partial<Wall> = {}): Wall[] {
  return corners.map((from, i) => wall(`${prefix}${i + 1}`, from, corners[(i + 1) % corners.length] as XY, rest));
}

/** Returns the corners of a rectangle, clockwise on screen from the top left. */
export function rectangle(x: number, y: number, width: number, depth: number): XY[] {
  return [
    [x, y],
    [x + width, y],
    [x + width, y + depth],
    [x, y + depth],
  ];
}

/** Returns a level with these walls and other parts. */
export function drawn(walls: readonly Wall[], rest: Partial<Level> = {}): Level {
  return { ...emptyLevel('L1'), walls, ...rest };
}

export function planOf(level: Level, rest: Partial<Plan> = {}): Plan {
  return { ...emptyPlan(), levels: [level], ...rest };
}

/** Returns a detector of 50.8 mm radius, 762 mm above the floor. */
export function detectorAt(at: XY, rest: Partial<Detector> = {}): Detector {
  return { id: 'd1', label: '', at, base: 762, radius: 50.8, tall: 25.4, pair: null, ...rest };
}

/** Returns points rotated about the origin, degrees clockwise on screen. */
export function turned(degrees: number): (p: XY) => XY {
  const [cos, sin] = [Math.cos((degrees * Math.PI) / 180), Math.sin((degrees * Math.PI) / 180)];
  return ([x, y]) => [x * cos - y * sin, x * sin + y * cos];
}

/** Returns the walls with `move` applied to every end. */
export function movedWalls(walls: readonly Wall[], move: (p: XY) => XY): Wall[] {
  return walls.map((one) => ({ ...one, from: move(one.from), to: move(one.to) }));
}
