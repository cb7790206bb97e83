import { shapeRing } from './body.ts';
import { jambs } from './pick.ts';
import type { Box, Level, Mm, Opening, Shape, Wall, XY } from './plan/model.ts';
import { along, distance, nearestParameter } from './point.ts';

/** A grip of an item: what one takes hold of to change its shape. */
export type Handle =
  | { readonly kind: 'wall-end'; readonly id: string; readonly end: 'from' | 'to'; readonly at: XY }
  | { readonly kind: 'jamb'; readonly id: string; readonly end: 'near' | 'far'; readonly at: XY }
  | { readonly kind: 'corner'; readonly id: string; readonly index: number; readonly at: XY }
  | { readonly kind: 'turn'; readonly id: string; readonly at: XY }
  | { readonly kind: 'radius'; readonly id: string; readonly at: XY };

/** Ends of walls nearer than this count as one corner, mm: a hair above what rounding to 1/64 in leaves. */
const JOINED: Mm = 0.5;
/** Nothing is made smaller than this by a drag, mm: half an inch. */
const LEAST_SIZE: Mm = 12.7;

/**
 * The grips of one item; none for room names and detectors, which are only moved.
 * @param standOff how far above a box its turning grip stands, mm
 */
export function handlesOf(level: Level, id: string, standOff: Mm): readonly Handle[] {
  const wall = level.walls.find((each) => each.id === id);
  if (wall) return (['from', 'to'] as const).map((end) => ({ kind: 'wall-end', id, end, at: wall[end] }));
  const opening = level.openings.find((each) => each.id === id);
  const ends = opening && jambs(level, opening);
  if (ends) return (['near', 'far'] as const).map((end, index) => ({ kind: 'jamb', id, end, at: ends[index] as XY }));
  const solid = [...level.fixtures, ...level.objects].find((each) => each.id === id);
  return solid ? shapeHandles(id, solid.shape, standOff) : [];
}

function shapeHandles(id: string, shape: Shape, standOff: Mm): readonly Handle[] {
  if ('circle' in shape) {
    const {
      center: [x, y],
      radius,
    } = shape.circle;
    return [{ kind: 'radius', id, at: [x + radius, y] }];
  }
  const corners = shapeRing(shape).map((at, index): Handle => ({ kind: 'corner', id, index, at }));
  if ('polygon' in shape) return corners;
  const [ux, uy] = axes(shape.box.turn);
  const reach = shape.box.depth / 2 + standOff;
  return [...corners, { kind: 'turn', id, at: [shape.box.center[0] + uy * reach, shape.box.center[1] - ux * reach] }];
}

/**
 * The level with a grip pulled to `at`. The opposite corner of a box, the other jamb of an opening and the middle of a
 * circle stay; ends of other walls that meet in a pulled wall's end come along. Nothing gets smaller than half an inch.
 * @param turnStep turns are whole steps of this, degrees; null for any
 */
export function withHandleAt(level: Level, handle: Handle, at: XY, turnStep: number | null): Level {
  switch (handle.kind) {
    case 'wall-end':
      return withWallEndAt(level, handle.id, handle.end, at);
    case 'jamb':
      return withJambAt(level, handle.id, handle.end, at);
    default:
      return withShape(level, handle.id, (shape) => reshaped(shape, handle, at, turnStep));
  }
}

function reshaped(shape: Shape, handle: Handle, at: XY, turnStep: number | null): Shape {
  if ('circle' in shape && handle.kind === 'radius') {
    return { circle: { ...shape.circle, radius: Math.max(LEAST_SIZE / 2, distance(shape.circle.center, at)) } };
  }
  if ('polygon' in shape && handle.kind === 'corner') {
    return {
      polygon: { ...shape.polygon, points: shape.polygon.points.map((point, i) => (i === handle.index ? at : point)) },
    };
  }
  if (!('box' in shape)) return shape;
  if (handle.kind === 'turn') return { box: turned(shape.box, at, turnStep) };
  return handle.kind === 'corner' ? { box: stretched(shape.box, handle.index, at) } : shape;
}

function turned(box: Box, at: XY, step: number | null): Box {
  const turn = (Math.atan2(at[1] - box.center[1], at[0] - box.center[0]) * 180) / Math.PI + 90;
  const stepped = step ? Math.round(turn / step) * step : turn;
  return { ...box, turn: ((stepped % 360) + 360) % 360 };
}

function stretched(box: Box, index: number, at: XY): Box {
  const fixed = shapeRing({ box })[(index + 2) % 4] as XY;
  const [ux, uy] = axes(box.turn);
  const signs: XY = [index === 0 || index === 3 ? -1 : 1, index < 2 ? -1 : 1];
  const across = ((at[0] - fixed[0]) * ux + (at[1] - fixed[1]) * uy) * signs[0];
  const down = (-(at[0] - fixed[0]) * uy + (at[1] - fixed[1]) * ux) * signs[1];
  const width = Math.max(LEAST_SIZE, across);
  const depth = Math.max(LEAST_SIZE, down);
  const [i, j] = [(signs[0] * width) / 2, (signs[1] * depth) / 2];
  return { ...box, width, depth, center: [fixed[0] + i * ux - j * uy, fixed[1] + i * uy + j * ux] };
}

/** One end of a wall moved, and with it every end that meets it. Openings of all walls concerned keep their place on the page. */
export function withWallEndAt(level: Level, id: string, end: 'from' | 'to', at: XY): Level {
  const pulled = level.walls.find((wall) => wall.id === id);
  if (!pulled) return level;
  const corner = pulled[end];
  const moved = (wall: Wall, own: 'from' | 'to'): XY => {
    const other = wall.id === id && own !== end;
    return !other && distance(wall[own], corner) <= JOINED ? at : wall[own];
  };
  return withWalls(
    level,
    level.walls.map((wall) => ({ ...wall, from: moved(wall, 'from'), to: moved(wall, 'to') })),
  );
}

/**
 * Items moved by `by`. Walls that meet a moved wall end to end are stretched after it, and those that butt against its
 * middle follow it sideways, so that no room opens. Openings stay on their walls; an opening alone slides by what `by` has
 * along its wall.
 */
export function withItemsMoved(level: Level, ids: ReadonlySet<string>, by: XY): Level {
  const shift = <T extends { readonly id: string; readonly at: XY }>(item: T): T =>
    ids.has(item.id) ? { ...item, at: plus(item.at, by) } : item;
  const shiftShape = <T extends { readonly id: string; readonly shape: Shape }>(item: T): T =>
    ids.has(item.id) ? { ...item, shape: shapeMoved(item.shape, by) } : item;
  const walls = level.walls.some(({ id }) => ids.has(id)) ? wallsMoved(level.walls, ids, by) : level.walls;
  const moved = withWalls(level, walls);
  return {
    ...moved,
    openings: moved.openings.map((opening) =>
      ids.has(opening.id) && !ids.has(opening.wall) ? slid(moved, opening, by) : opening,
    ),
    rooms: kept(level.rooms, level.rooms.map(shift)),
    fixtures: kept(level.fixtures, level.fixtures.map(shiftShape)),
    objects: kept(level.objects, level.objects.map(shiftShape)),
    detectors: kept(level.detectors, level.detectors.map(shift)),
  };
}

/** The same list when nothing in it changed: whatever is derived from it stays valid. */
function kept<T>(before: readonly T[], after: readonly T[]): readonly T[] {
  return after.every((item, index) => item === before[index]) ? before : after;
}

function wallsMoved(walls: readonly Wall[], ids: ReadonlySet<string>, by: XY): readonly Wall[] {
  const movers = walls.filter(({ id }) => ids.has(id));
  const follow = (end: XY): XY => {
    if (movers.some(({ from, to }) => distance(from, end) <= JOINED || distance(to, end) <= JOINED))
      return plus(end, by);
    const held = movers.find(
      ({ from, to }) => distance(end, along(from, to, nearestParameter(end, from, to))) <= JOINED,
    );
    return held ? plus(end, sideways(held, by)) : end;
  };
  return walls.map((wall) =>
    ids.has(wall.id)
      ? { ...wall, from: plus(wall.from, by), to: plus(wall.to, by) }
      : { ...wall, from: follow(wall.from), to: follow(wall.to) },
  );
}

/** The part of a move that is square to the wall. */
function sideways({ from, to }: Wall, by: XY): XY {
  const length = distance(from, to) || 1;
  const [ux, uy] = [(to[0] - from[0]) / length, (to[1] - from[1]) / length];
  const ahead = by[0] * ux + by[1] * uy;
  return [by[0] - ahead * ux, by[1] - ahead * uy];
}

/** New places for walls; their openings keep their place on the page as far as the wall still reaches there. */
function withWalls(level: Level, walls: readonly Wall[]): Level {
  const same = walls.every((wall, i) => {
    const old = level.walls[i];
    return old && samePoint(old.from, wall.from) && samePoint(old.to, wall.to);
  });
  if (same) return level;
  const openings = level.openings.map((opening) => {
    const before = level.walls.find(({ id }) => id === opening.wall);
    const after = walls.find(({ id }) => id === opening.wall);
    return before && after ? heldInPlace(opening, before, after) : opening;
  });
  return { ...level, walls, openings };
}

function heldInPlace(opening: Opening, before: Wall, after: Wall): Opening {
  const [old, length] = [distance(before.from, before.to), distance(after.from, after.to)];
  if (old === 0 || length === 0) return opening;
  // A wall moved as a whole takes its openings along.
  const rigid = samePoint(minus(after.from, before.from), minus(after.to, before.to));
  if (rigid) return opening;
  const middle = along(before.from, before.to, (opening.offset + opening.width / 2) / old);
  const wanted = nearestParameter(middle, after.from, after.to) * length - opening.width / 2;
  return { ...opening, offset: clamp(wanted, 0, Math.max(0, length - opening.width)) };
}

function slid(level: Level, opening: Opening, by: XY): Opening {
  const wall = level.walls.find(({ id }) => id === opening.wall);
  const length = wall ? distance(wall.from, wall.to) : 0;
  if (!wall || length === 0) return opening;
  const ahead = (by[0] * (wall.to[0] - wall.from[0]) + by[1] * (wall.to[1] - wall.from[1])) / length;
  return { ...opening, offset: clamp(opening.offset + ahead, 0, Math.max(0, length - opening.width)) };
}

function withJambAt(level: Level, id: string, end: 'near' | 'far', at: XY): Level {
  const openings = level.openings.map((opening) => {
    const wall = level.walls.find((each) => each.id === opening.wall);
    if (opening.id !== id || !wall) return opening;
    const pulled = nearestParameter(at, wall.from, wall.to) * distance(wall.from, wall.to);
    const far = opening.offset + opening.width;
    if (end === 'far') return { ...opening, width: Math.max(LEAST_SIZE, pulled - opening.offset) };
    const offset = Math.min(pulled, far - LEAST_SIZE);
    return { ...opening, offset, width: far - offset };
  });
  return { ...level, openings };
}

function withShape(level: Level, id: string, change: (shape: Shape) => Shape): Level {
  const changed = <T extends { readonly id: string; readonly shape: Shape }>(item: T): T =>
    item.id === id ? { ...item, shape: change(item.shape) } : item;
  return {
    ...level,
    fixtures: kept(level.fixtures, level.fixtures.map(changed)),
    objects: kept(level.objects, level.objects.map(changed)),
  };
}

/** A shape moved without turning. */
export function shapeMoved(shape: Shape, by: XY): Shape {
  if ('circle' in shape) return { circle: { ...shape.circle, center: plus(shape.circle.center, by) } };
  if ('box' in shape) return { box: { ...shape.box, center: plus(shape.box.center, by) } };
  return { polygon: { ...shape.polygon, points: shape.polygon.points.map((point) => plus(point, by)) } };
}

function axes(turn: number): XY {
  const radians = (turn * Math.PI) / 180;
  return [Math.cos(radians), Math.sin(radians)];
}
function plus([x, y]: XY, [dx, dy]: XY): XY {
  return [x + dx, y + dy];
}
function minus([x, y]: XY, [dx, dy]: XY): XY {
  return [x - dx, y - dy];
}
function samePoint(a: XY, b: XY): boolean {
  return Math.abs(a[0] - b[0]) < 1e-9 && Math.abs(a[1] - b[1]) < 1e-9;
}
function clamp(value: number, least: number, most: number): number {
  return Math.min(most, Math.max(least, value));
}
