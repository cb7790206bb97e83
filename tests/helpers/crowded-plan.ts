import type { Level, Plan, Wall, XY } from '../../geometry/plan/model.ts';
import { Dice } from './random-level/dice.ts';
import { randomPlan } from './random-level.ts';

/**
 * Returns a random plan with three to eight more walls, each placed by an existing one: closer than a person draws, at distances around the
 * tolerances (0.01 mm, half an inch), doubled, askew, from end to end, sometimes marked as outside or inside.
 */
export function crowdedPlan(seed: number): Plan {
  const plan = randomPlan(seed);
  const dice = new Dice(seed * 104_729 + 7);
  return { ...plan, levels: plan.levels.map((level) => (level.walls.length > 0 ? crowded(dice, level) : level)) };
}

function crowded(dice: Dice, level: Level): Level {
  const walls = [...level.walls];
  const ways = [fromAlong, laidOn, endToEnd, square, studs, fromEnd];
  for (let i = dice.int(3, 8); i > 0; i--) {
    const frame = frameOf(dice.pick(walls));
    if (frame.length < 500) continue;
    const [from, to] = dice.pick(ways)(dice, frame, walls);
    const thickness = dice.pick([frame.wall.thickness, frame.wall.thickness, 60, 90, 300]);
    const side = dice.pick(['auto', 'auto', 'auto', 'outside', 'inside'] as const);
    if (Math.hypot(to[0] - from[0], to[1] - from[1]) > 20) walls.push({ id: `near-${i}`, from, to, thickness, side });
  }
  return { ...level, walls };
}

interface Frame {
  readonly wall: Wall;
  readonly length: number;
  /** The point `along` mm along the wall and `aside` mm to its side. */
  readonly at: (along: number, aside: number) => XY;
}

function frameOf(wall: Wall): Frame {
  const { from, to } = wall;
  const length = Math.hypot(to[0] - from[0], to[1] - from[1]);
  const [ux, uy] = [(to[0] - from[0]) / length, (to[1] - from[1]) / length];
  return { wall, length, at: (s, t) => [from[0] + ux * s - uy * t, from[1] + uy * s + ux * t] };
}

type Way = (dice: Dice, frame: Frame, walls: readonly Wall[]) => readonly [XY, XY];

/** Distance to the side of a wall, mm: zero, within the tolerances of touching, small, and around half an inch. */
const off = (dice: Dice) =>
  dice.pick([0, 0.004, 0.02, 0.5, 3, 8, 12, 12.69, 14, dice.between(0, 13)]) * dice.pick([1, -1]);

const away = ([x, y]: XY, turn: number, far: number): XY => [x + far * Math.cos(turn), y + far * Math.sin(turn)];

const fromAlong: Way = (dice, { length, at }) => {
  const from = at(dice.between(0, length), off(dice));
  return [from, away(from, dice.between(0, 2 * Math.PI), dice.between(300, 4000))];
};

const laidOn: Way = (dice, { length, at }) => {
  const by = off(dice);
  return [
    at(dice.pick([0, 0, by, dice.between(0, length / 2)]), dice.pick([0, by])),
    at(length + dice.pick([0, by, -dice.between(0, length / 2)]), dice.pick([0, by, -by])),
  ];
};

const endToEnd: Way = (dice, { wall }, walls) => {
  const other = dice.pick(walls);
  return [away(dice.pick([other.from, other.to]), -Math.PI / 4, off(dice)), dice.pick([wall.from, wall.to])];
};

const square: Way = (dice, { length, at }) => {
  const [s, by] = [dice.between(0, length), off(dice)];
  return [at(s, by), at(s, by + dice.between(300, 3000) * dice.pick([1, -1]))];
};

const studs: Way = (dice, { wall, length, at }) => {
  const aside = (wall.thickness / 2 + 45 + dice.between(20, 330)) * dice.pick([1, -1]);
  const by = off(dice);
  return [at(by, aside), at(length + by, aside)];
};

const fromEnd: Way = (dice, { length, at }) => {
  const s = dice.pick([0, length]) + off(dice);
  const turn = (dice.pick([90, 45, 180, 1, 0.1, 359, 269.9]) * Math.PI) / 180;
  const far = dice.between(300, 3000);
  return [at(s, 0), at(s + far * Math.cos(turn), far * Math.sin(turn))];
};
