import type { Mm, Wall, XY } from '../../../geometry/plan/model.ts';
import type { Dice } from './dice.ts';
import { alongWall, type Cell, type Draft, nextWallId, offWall, wallLength } from './draft.ts';

/**
 * A loose end nearer to another wall than this, mm, yet not on it, is left out of the drawing: how such ends are joined is
 * the drawing's own business (half an inch), tested by hand elsewhere. Coordinates that belong together agree to 1e-9.
 */
const NEAR_MISS = { least: 1e-6, most: 30 };

type Extra = (dice: Dice, draft: Draft) => void;

/** Stubs, free-standing loops, crossings, walls that are doubled, split or short, sides that are set. */
export const WALL_EXTRAS: readonly Extra[] = [
  addFreeLoop,
  addFreeLoop,
  addStub,
  addStub,
  addShortStub,
  addFreeWall,
  addCrossingWall,
  doubleWall,
  addOverlap,
  splitWall,
  splitOffSliver,
  addBump,
  setSide,
  setSide,
  thickenWall,
];

function push(draft: Draft, from: XY, to: XY, thickness: Mm, side: Wall['side'] = 'auto'): void {
  draft.walls.push({ id: nextWallId(draft), from, to, thickness, side });
}

function anyWall(dice: Dice, { walls }: Draft): Wall | null {
  const long = walls.filter((wall) => wallLength(wall) > 400);
  return long.length > 0 ? dice.pick(long) : null;
}

/** A chimney block, a column or a room within a room: three to five walls that touch no other. */
function addFreeLoop(dice: Dice, draft: Draft): void {
  const cell = dice.pick(draft.cells);
  const most = Math.min(...cell.reach) - 450;
  if (most < 250) return;
  const radius = dice.between(200, most);
  const count = dice.int(3, 5);
  const start = dice.chance(0.5) ? Math.PI / 4 : dice.between(0, 2 * Math.PI);
  const corners = Array.from({ length: count }, (_, i): XY => {
    const angle = start + (2 * Math.PI * i) / count;
    return [cell.middle[0] + radius * Math.cos(angle), cell.middle[1] + radius * Math.sin(angle)];
  });
  const thickness = dice.pick([50, 100, 150]);
  corners.forEach((corner, i) => {
    push(draft, corner, corners[(i + 1) % count] as XY, thickness);
  });
}

function addStub(dice: Dice, draft: Draft): void {
  leanOn(dice, draft, dice.between(250, 1500));
}

/** A nib: perhaps so short that the wall that it leans on swallows it. */
function addShortStub(dice: Dice, draft: Draft): void {
  leanOn(dice, draft, dice.between(20, 220));
}

function leanOn(dice: Dice, draft: Draft, length: Mm): void {
  const wall = anyWall(dice, draft);
  if (!wall) return;
  const foot = alongWall(wall, dice.between(0.15, 0.85));
  const square = Math.atan2(wall.to[0] - wall.from[0], wall.from[1] - wall.to[1]);
  const angle = square + (dice.chance(0.5) ? 0 : dice.between(-1, 1)) + (dice.chance(0.5) ? Math.PI : 0);
  push(
    draft,
    foot,
    [foot[0] + length * Math.cos(angle), foot[1] + length * Math.sin(angle)],
    dice.pick([60, 100, 200]),
  );
}

function addFreeWall(dice: Dice, draft: Draft): void {
  const { middle, reach } = dice.pick(draft.cells);
  const at = (): XY => [middle[0] + dice.between(-0.6, 0.6) * reach[0], middle[1] + dice.between(-0.6, 0.6) * reach[1]];
  push(draft, at(), at(), dice.pick([50, 120]), dice.pick(['auto', 'auto', 'outside'] as const));
}

/** Straight from room to room: crosses whatever is between. */
function addCrossingWall(dice: Dice, draft: Draft): void {
  const somewhere = ({ middle, reach }: Cell): XY => [
    middle[0] + dice.between(-0.5, 0.5) * reach[0],
    middle[1] + dice.between(-0.5, 0.5) * reach[1],
  ];
  const [a, b] = [somewhere(dice.pick(draft.cells)), somewhere(dice.pick(draft.cells))];
  const share = dice.pick([1, 1.6]);
  push(draft, a, [a[0] + (b[0] - a[0]) * share, a[1] + (b[1] - a[1]) * share], dice.pick([80, 140]));
}

function doubleWall(dice: Dice, draft: Draft): void {
  const wall = anyWall(dice, draft);
  if (!wall) return;
  const thickness = dice.chance(0.5) ? wall.thickness : dice.pick([50, 250]);
  push(draft, wall.to, wall.from, thickness, dice.pick(['auto', 'auto', 'outside', 'inside'] as const));
}

/** A wall that runs on part of another. */
function addOverlap(dice: Dice, draft: Draft): void {
  const wall = anyWall(dice, draft);
  if (!wall) return;
  const from = dice.pick([0, dice.between(0, 0.4)]);
  const to = dice.pick([1, dice.between(0.6, 1)]);
  push(draft, alongWall(wall, from), alongWall(wall, to), dice.pick([wall.thickness, 60, 280]));
}

function splitWall(dice: Dice, draft: Draft): void {
  const wall = anyWall(dice, draft);
  if (wall) replace(draft, wall, [wall.from, alongWall(wall, dice.between(0.2, 0.8)), wall.to]);
}

/** Splits a wall so that a very short one stands between two. */
function splitOffSliver(dice: Dice, draft: Draft): void {
  const wall = anyWall(dice, draft);
  if (!wall) return;
  const share = dice.pick([0, dice.between(0.2, 0.8)]);
  const end = share + dice.between(1, 45) / wallLength(wall);
  const stops = [wall.from, alongWall(wall, share), alongWall(wall, end), wall.to];
  replace(draft, wall, share === 0 ? stops.slice(1) : stops);
}

/** A boxed-out pipe: a wall steps aside by a little and back. */
function addBump(dice: Dice, draft: Draft): void {
  const wall = anyWall(dice, draft);
  if (!wall) return;
  const aside = dice.between(15, 260) * dice.pick([-1, 1]);
  const start = dice.between(0.2, 0.6);
  const end = start + dice.between(80, 380) / wallLength(wall);
  replace(draft, wall, [
    wall.from,
    alongWall(wall, start),
    alongWall(wall, start, aside),
    alongWall(wall, end, aside),
    alongWall(wall, end),
    wall.to,
  ]);
}

function setSide(dice: Dice, draft: Draft): void {
  const k = dice.int(0, draft.walls.length - 1);
  draft.walls = draft.walls.map((wall, i) =>
    i === k ? { ...wall, side: dice.pick(['outside', 'inside'] as const) } : wall,
  );
}

function thickenWall(dice: Dice, draft: Draft): void {
  const k = dice.int(0, draft.walls.length - 1);
  const thickness = dice.pick([0, 40, 90, 350]);
  draft.walls = draft.walls.map((wall, i) => (i === k ? { ...wall, thickness } : wall));
}

/** Puts a chain of walls in the place of one. */
function replace(draft: Draft, wall: Wall, stops: readonly XY[]): void {
  draft.walls = draft.walls.filter((one) => one !== wall);
  for (let i = 1; i < stops.length; i++) {
    draft.walls.push({
      ...wall,
      id: i === 1 ? wall.id : nextWallId(draft),
      from: stops[i - 1] as XY,
      to: stops[i] as XY,
    });
  }
}

/** Leaves out walls with an end that nearly meets another wall, until none is left. */
export function withoutNearMisses(walls: readonly Wall[]): Wall[] {
  const kept = [...walls];
  for (;;) {
    const k = kept.findIndex((wall) => hasNearMiss(wall, kept));
    if (k === -1) return kept;
    kept.splice(k, 1);
  }
}

function hasNearMiss(wall: Wall, walls: readonly Wall[]): boolean {
  return [wall.from, wall.to].some((end) => {
    const off = walls.filter((one) => one !== wall).map((one) => offWall(end, one));
    return !off.some((d) => d <= NEAR_MISS.least) && off.some((d) => d <= NEAR_MISS.most);
  });
}
