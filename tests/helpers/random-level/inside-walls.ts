import type { Level, Mm, Wall, XY } from '../../../geometry/plan/model.ts';
import type { Dice } from './dice.ts';
import { alongWall, wallLength } from './draft.ts';

type Ends = readonly [XY, XY];
type Way = (dice: Dice, walls: readonly Wall[]) => Ends;

/** Walls as a person draws them into a house: at every node and angle, on other walls, askew, short, missing the wall they were to meet. */
const WAYS: readonly Way[] = [atNode, atNode, atNode, askew, askew, onPart, tiny, fromEndToEnd, beforeWall, nearMiss];

/** Returns the level with one more wall, last in its list. Most of it is usually indoors; the caller has to check that. */
export function withInsideWall(dice: Dice, level: Level, id: string): Level {
  const ways = level.walls.filter((wall) => wallLength(wall) > 1);
  if (ways.length === 0) return level;
  const [from, to] = dice.pick(WAYS)(dice, ways);
  const thickness = dice.pick([0, 60, 100, 115, 115, 150, 203.2, 300, 450]);
  const side = dice.pick(['auto', 'auto', 'inside'] as const);
  return { ...level, walls: [...level.walls, { id, from, to, thickness, side }] };
}

function turnedBy([x, y]: XY, angle: number, length: Mm): XY {
  return [x + length * Math.cos(angle), y + length * Math.sin(angle)];
}

function bearingOf({ from, to }: Wall): number {
  return Math.atan2(to[1] - from[1], to[0] - from[0]);
}

function anEnd(dice: Dice, walls: readonly Wall[]): XY {
  const wall = dice.pick(walls);
  return dice.chance(0.5) ? wall.from : wall.to;
}

/** A multiple of 45 degrees from the direction of some wall, almost one, or any angle, rad. */
function anAngle(dice: Dice, walls: readonly Wall[]): number {
  const straight = bearingOf(dice.pick(walls)) + dice.int(0, 7) * (Math.PI / 4);
  return dice.pick([straight, straight, straight + dice.between(-0.01, 0.01), dice.between(0, 2 * Math.PI)]);
}

function atNode(dice: Dice, walls: readonly Wall[]): Ends {
  const from = anEnd(dice, walls);
  return [from, turnedBy(from, anAngle(dice, walls), dice.pick([dice.between(30, 600), dice.between(600, 6000)]))];
}

/** A wall drawn again, off by up to about half an inch at one end or both. */
function askew(dice: Dice, walls: readonly Wall[]): Ends {
  const wall = dice.pick(walls);
  const off = () => dice.pick([0, 0, 1e-6, 0.009, dice.between(0.5, 12), dice.between(12, 14)]) * dice.pick([-1, 1]);
  const ends: Ends = [alongWall(wall, 0, off()), alongWall(wall, 1, off())];
  return dice.chance(0.5) ? ends : [ends[1], ends[0]];
}

function onPart(dice: Dice, walls: readonly Wall[]): Ends {
  const wall = dice.pick(walls);
  const off = () => dice.pick([0, 0, dice.between(-12, 12)]);
  return [alongWall(wall, dice.pick([0, dice.next()]), off()), alongWall(wall, dice.pick([1, dice.next()]), off())];
}

function tiny(dice: Dice, walls: readonly Wall[]): Ends {
  const from = dice.chance(0.5) ? anEnd(dice, walls) : alongWall(dice.pick(walls), dice.next());
  return [from, turnedBy(from, anAngle(dice, walls), dice.pick([0.015, dice.between(0.05, 3), dice.between(3, 60)]))];
}

function fromEndToEnd(dice: Dice, walls: readonly Wall[]): Ends {
  return [anEnd(dice, walls), dice.chance(0.5) ? anEnd(dice, walls) : alongWall(dice.pick(walls), dice.next())];
}

/** A stud wall in front of a wall. */
function beforeWall(dice: Dice, walls: readonly Wall[]): Ends {
  const wall = dice.pick(walls);
  const off = dice.pick([dice.between(40, 320), dice.between(300, 700)]) * dice.pick([-1, 1]);
  return [alongWall(wall, dice.pick([0, 0.1]), off), alongWall(wall, dice.pick([1, 0.8]), off)];
}

/** A wall that starts a little off some wall or end of a wall. */
function nearMiss(dice: Dice, walls: readonly Wall[]): Ends {
  const off = () => turnedBy([0, 0], dice.between(0, 7), dice.between(0, 16));
  const near = dice.chance(0.6) ? anEnd(dice, walls) : alongWall(dice.pick(walls), dice.next());
  const [x, y] = off();
  const from: XY = [near[0] + x, near[1] + y];
  return [from, dice.chance(0.5) ? turnedBy(from, anAngle(dice, walls), dice.between(50, 5000)) : anEnd(dice, walls)];
}
