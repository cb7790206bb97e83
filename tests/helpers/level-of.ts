import type { Level, Wall, XY } from '../../geometry/plan/model.ts';
import { emptyLevel } from '../../geometry/planfile/empty.ts';

/** Returns a wall of a level under test. */
export function wall(id: string, from: XY, to: XY, thickness = 100): Wall {
  return { id, from, to, thickness, side: 'auto' };
}

/** Returns four walls w1 (top), w2 (right), w3 (bottom), w4 (left), clockwise on screen, with a rectangle as their center-lines. */
export function boxWalls(left: number, top: number, right: number, bottom: number, thickness = 100): readonly Wall[] {
  return [
    wall('w1', [left, top], [right, top], thickness),
    wall('w2', [right, top], [right, bottom], thickness),
    wall('w3', [right, bottom], [left, bottom], thickness),
    wall('w4', [left, bottom], [left, top], thickness),
  ];
}

/** Returns a level with some parts, deeply frozen, so that changing it in place throws. */
export function levelOf(parts: Partial<Level>): Level {
  return frozen({ ...emptyLevel('L1'), ...parts });
}

function frozen<T>(value: T): T {
  if (typeof value === 'object' && value !== null && !Object.isFrozen(value)) {
    Object.freeze(value);
    for (const part of Object.values(value)) frozen(part);
  }
  return value;
}
