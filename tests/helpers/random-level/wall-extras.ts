import type { Mm, Wall, XY } from '../../../geometry/plan/model.ts';
import type { Dice } from './dice.ts';
import { alongWall, type Cell, type Draft, nextWallId, offWall, wallLength } from './draft.ts';

/**
 * Ranges of distances from an end to another wall that are excluded, mm: just off the wall, and half an inch, where rounding decides whether
 * the end is extended to the wall. Coordinates that belong together agree to 1e-9.
 */
const DOUBTFUL = [
  [1e-6, 0.3],
  [12.65, 12.75],
] as const;

type Extra = (dice: Dice, draft: Draft) => void;

/** Stubs, free-standing loops, crossings, walls that are doubled, split or short, and walls with a given side. */
export const WALL_EXTRAS: readonly Extra[] = [
  addFreeLoop,
  addFreeLoop,
  addStub,
  addStub,
  addShortStub,
  addFreeWall,
  addCrossingWall,
  addNodePartition,
  addNodePartition,
  addNearMiss,
  doubleWall,
  addAskewDouble,
  addAskewDouble,
  addOverlap,
  addCavity,
  addCavity,
  addBoxedStuds,
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

/** A nib, possibly so short that it is inside the wall that it starts at. */
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

/** A straight wall from room to room, across all walls between them. */
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

/** A wall drawn almost on another, a little off at one end or both. */
function addAskewDouble(dice: Dice, draft: Draft): void {
  const wall = anyWall(dice, draft);
  if (!wall) return;
  const off = () => dice.pick([dice.between(0.5, 12.5), dice.between(13.5, 90)]) * dice.pick([-1, 1]);
  const [a, b] = dice.pick([
    [0, off()],
    [off(), 0],
    [off(), off()],
  ] as const);
  const [from, to] = [alongWall(wall, dice.pick([0, 0, 0.2]), a), alongWall(wall, dice.pick([1, 1, 0.7]), b)];
  push(draft, from, to, dice.pick([wall.thickness, 60, 115, 300]));
}

/** A wall between two corners or walls, each end off the point that it was to meet by up to about half an inch, short or past. */
function addNearMiss(dice: Dice, draft: Draft): void {
  const [one, two] = [anyWall(dice, draft), anyWall(dice, draft)];
  if (!one || !two || one === two) return;
  const off = () => dice.pick([0, dice.between(-14, 14)]);
  const near = (wall: Wall): XY => {
    const [x, y] = alongWall(wall, dice.pick([0, 1, dice.next()]));
    return [x + off(), y + off()];
  };
  push(draft, near(one), near(two), dice.pick([60, 115, one.thickness]));
}

/** A wall that starts where walls end or meet: in line with another wall, perpendicular to it, or at any angle. */
function addNodePartition(dice: Dice, draft: Draft): void {
  const wall = anyWall(dice, draft);
  const along = anyWall(dice, draft);
  if (!wall || !along) return;
  const from = dice.pick([wall.from, wall.to]);
  const bearing = Math.atan2(along.to[1] - along.from[1], along.to[0] - along.from[0]);
  const angle = bearing + dice.pick([0, Math.PI, Math.PI / 2, -Math.PI / 2, dice.between(0, 2 * Math.PI)]);
  const length = dice.pick([dice.between(60, 600), dice.between(600, 4000)]);
  const to: XY = [from[0] + length * Math.cos(angle), from[1] + length * Math.sin(angle)];
  push(draft, from, to, dice.pick([60, 115, 115, wall.thickness, 300]));
}

/** A stud wall in front of another, from wall to wall, with a cavity 20 to 400 mm wide. */
function addCavity(dice: Dice, draft: Draft): void {
  const wall = anyWall(dice, draft);
  if (!wall) return;
  const thickness = dice.pick([60, 90, 115]);
  const off = (dice.between(20, 400) + (wall.thickness + thickness) / 2) * dice.pick([-1, 1]);
  const middle = alongWall(wall, dice.between(0.3, 0.7), off);
  const ends = [-1, 1].map((way) => hitFrom(middle, wall, way, draft.walls));
  const [from, to] = ends;
  if (from && to) push(draft, from, to, thickness);
}

/** The first intersection of a line beside a wall with another wall; null for none. */
function hitFrom([x, y]: XY, { from, to }: Wall, way: number, walls: readonly Wall[]): XY | null {
  const length = Math.hypot(to[0] - from[0], to[1] - from[1]);
  const [u, v] = [(way * (to[0] - from[0])) / length, (way * (to[1] - from[1])) / length];
  let nearest = Number.POSITIVE_INFINITY;
  for (const { from: a, to: b } of walls) {
    const [dx, dy] = [b[0] - a[0], b[1] - a[1]];
    const across = u * dy - v * dx;
    if (Math.abs(across) < 1e-3 * Math.hypot(dx, dy)) continue;
    const out = ((a[0] - x) * dy - (a[1] - y) * dx) / across;
    const share = ((a[0] - x) * v - (a[1] - y) * u) / across;
    if (out > 0 && share >= 0 && share <= 1) nearest = Math.min(nearest, out);
  }
  return Number.isFinite(nearest) ? [x + u * nearest, y + v * nearest] : null;
}

/** A stud wall in front of a part of a wall, with a return to it at either end. */
function addBoxedStuds(dice: Dice, draft: Draft): void {
  const wall = anyWall(dice, draft);
  if (!wall) return;
  const thickness = dice.pick([60, 90, 115]);
  const off = (dice.between(20, 400) + (wall.thickness + thickness) / 2) * dice.pick([-1, 1]);
  const [start, end] = [dice.pick([0, dice.between(0.05, 0.4)]), dice.pick([1, dice.between(0.6, 0.95)])];
  const stops = [alongWall(wall, start), alongWall(wall, start, off), alongWall(wall, end, off), alongWall(wall, end)];
  for (let i = 1; i < stops.length; i++) push(draft, stops[i - 1] as XY, stops[i] as XY, thickness);
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

/** Splits a wall into two with a very short one between them. */
function splitOffSliver(dice: Dice, draft: Draft): void {
  const wall = anyWall(dice, draft);
  if (!wall) return;
  const share = dice.pick([0, dice.between(0.2, 0.8)]);
  const end = share + dice.between(1, 45) / wallLength(wall);
  const stops = [wall.from, alongWall(wall, share), alongWall(wall, end), wall.to];
  replace(draft, wall, share === 0 ? stops.slice(1) : stops);
}

/** A boxed-in pipe: a wall with a small step aside and back. */
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

/** Replaces a wall by a chain of walls. */
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

/** Returns the walls without those whose ends are at a doubtful distance from another wall, where rounding decides whether they meet. */
export function withoutDoubt(walls: readonly Wall[]): Wall[] {
  const kept = [...walls];
  for (;;) {
    const k = kept.findIndex((wall) => isDoubtful(wall, kept));
    if (k === -1) return kept;
    kept.splice(k, 1);
  }
}

function isDoubtful(wall: Wall, walls: readonly Wall[]): boolean {
  return [wall.from, wall.to].some((end) => {
    const off = walls.filter((one) => one !== wall).map((one) => offWall(end, one));
    return off.some((d) => DOUBTFUL.some(([least, most]) => d > least && d <= most));
  });
}
