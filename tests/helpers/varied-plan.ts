import type { Level, Plan, Wall, XY } from '../../geometry/plan/model.ts';
import { PROFILES } from '../../geometry/rules/profiles.ts';
import { Dice } from './random-level/dice.ts';
import { randomPlan } from './random-level.ts';

/**
 * Returns a random plan with parts that a person may add: another profile, answers "none here", stands, and walls as a person draws them:
 * partitions from any node at any angle, walls drawn askew on others, ends that stop short, cavities behind studs.
 */
export function variedPlan(seed: number): Plan {
  const plan = randomPlan(seed);
  const dice = new Dice(seed * 7919 + 13);
  return {
    ...plan,
    protocol: { ...plan.protocol, profile: dice.pick(PROFILES).id },
    levels: plan.levels.map((level) => (level.walls.length > 0 ? varied(dice, level) : level)),
  };
}

const ANSWERS = ['outside-opening', 'moving-air', 'heat', 'sump', 'floor-drain', 'direct-sun'];

function varied(dice: Dice, level: Level): Level {
  const walls = [...level.walls];
  for (let i = dice.pick([0, 1, 1, 2, 3]); i > 0; i--) {
    const wall = dice.pick(walls);
    const ways = [partition, laidAskew, studs] as const;
    if (Math.hypot(wall.to[0] - wall.from[0], wall.to[1] - wall.from[1]) > 500) {
      walls.push(dice.pick(ways)(dice, wall, `extra-${i}`));
    }
  }
  if (dice.chance(0.3)) stopShort(dice, walls);
  return {
    ...level,
    walls,
    lookedFor: ANSWERS.filter(() => dice.chance(0.4)),
    detectors: level.detectors.map((one) => ({ ...one, support: dice.pick([null, 'hung', 'stand'] as const) })),
  };
}

const unit = ({ from, to }: Wall): XY => {
  const length = Math.hypot(to[0] - from[0], to[1] - from[1]);
  return [(to[0] - from[0]) / length, (to[1] - from[1]) / length];
};
const moved = ([x, y]: XY, [dx, dy]: XY, by: number): XY => [x + dx * by, y + dy * by];

/** A wall from an end of another at any angle, often in line with it. */
function partition(dice: Dice, wall: Wall, id: string): Wall {
  const [ux, uy] = unit(wall);
  const turn = dice.pick([0, 90, 180, 270, 45, dice.between(0, 360), dice.between(-2, 2)]) * (Math.PI / 180);
  const way: XY = [ux * Math.cos(turn) - uy * Math.sin(turn), ux * Math.sin(turn) + uy * Math.cos(turn)];
  const start = dice.pick([wall.from, wall.to]);
  const thickness = dice.pick([90, 115, wall.thickness]);
  return { id, from: start, to: moved(start, way, dice.between(300, 4000)), thickness, side: 'auto' };
}

/** A wall drawn almost on another. */
function laidAskew(dice: Dice, wall: Wall, id: string): Wall {
  const [ux, uy] = unit(wall);
  const off = dice.between(0.5, 12) * dice.pick([-1, 1]);
  const thickness = dice.pick([wall.thickness, 60, 300]);
  return { id, from: wall.from, to: moved(wall.to, [-uy, ux], off), thickness, side: 'auto' };
}

/** A wall along another with a cavity between them. */
function studs(dice: Dice, wall: Wall, id: string): Wall {
  const [ux, uy] = unit(wall);
  const off = (wall.thickness / 2 + 45 + dice.between(20, 330)) * dice.pick([-1, 1]);
  return {
    id,
    from: moved(wall.from, [-uy, ux], off),
    to: moved(wall.to, [-uy, ux], off),
    thickness: 90,
    side: 'auto',
  };
}

/** Moves one end of a wall by up to half an inch, short or past. */
function stopShort(dice: Dice, walls: Wall[]): void {
  const k = dice.int(0, walls.length - 1);
  const wall = walls[k] as Wall;
  walls[k] = { ...wall, to: moved(wall.to, unit(wall), dice.between(-12, 12)) };
}
