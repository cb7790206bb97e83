import type { Box, Deg, Fixture, Level, Mm, Shape, Stream, Wall, XY } from '../plan/model.ts';
import { direction, fullTurn } from '../plane/bearing.ts';
import { shapeMiddle, shapeRing } from '../plane/body.ts';
import { sameIfUnchanged } from '../plane/memoize.ts';
import { distance, nearestParameter, roundCoordinate, roundPoint } from '../plane/point.ts';
import { JOINED } from '../plane/tolerances.ts';
import { jambs } from '../snap/pick.ts';
import { withWalls } from './move-items.ts';
import { withStreamTurned } from './stream-turn.ts';
import { withSupportedItems } from './supported-items.ts';

/** A handle of an item, for changing its shape by dragging. */
export type Handle =
  | { readonly kind: 'wall-end'; readonly id: string; readonly end: 'from' | 'to'; readonly at: XY }
  | { readonly kind: 'jamb'; readonly id: string; readonly end: 'near' | 'far'; readonly at: XY }
  | { readonly kind: 'corner'; readonly id: string; readonly index: number; readonly at: XY }
  | { readonly kind: 'turn'; readonly id: string; readonly at: XY }
  | { readonly kind: 'radius'; readonly id: string; readonly at: XY }
  /** The tip of a fixture's air stream. */
  | { readonly kind: 'stream'; readonly id: string; readonly at: XY };

/** Least size after a drag, mm: half an inch. */
const LEAST_SIZE: Mm = 12.7;

/**
 * Returns the handles of one item; none for room labels and detectors, which are only moved.
 *
 * @param standOff distance of the rotation handle above a box, mm
 */
export function handlesOf(level: Level, id: string, standOff: Mm): readonly Handle[] {
  const wall = level.walls.find((each) => each.id === id);
  if (wall) return (['from', 'to'] as const).map((end) => ({ kind: 'wall-end', id, end, at: wall[end] }));
  const opening = level.openings.find((each) => each.id === id);
  const ends = opening && jambs(level, opening);
  if (ends) return (['near', 'far'] as const).map((end, index) => ({ kind: 'jamb', id, end, at: ends[index] as XY }));
  const fixture = level.fixtures.find((each) => each.id === id);
  const solid = fixture ?? level.objects.find((each) => each.id === id);
  if (!solid) return [];
  const stream = fixture?.stream;
  return [...shapeHandles(id, solid.shape, standOff), ...(stream ? [streamHandle(id, solid.shape, stream)] : [])];
}

function streamHandle(id: string, shape: Shape, { direction, reach }: Stream): Handle {
  const [x, y] = shapeMiddle(shape);
  const [ux, uy] = axes(direction);
  return { kind: 'stream', id, at: [x + ux * reach, y + uy * reach] };
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
 * Returns the level with a handle dragged to `at`. The opposite corner of a box, the other jamb of an opening and the
 * middle of a circle stay; what is on top of a rotated item rotates with it; ends of other walls that meet a dragged
 * wall end follow. Nothing gets smaller than half an inch.
 *
 * @param turnStep rotations and stream directions are multiples of this, degrees; null for any
 * @param reachStep the reach of a stream is a multiple of this, mm; null for any
 */
export function withHandleAt(
  level: Level,
  handle: Handle,
  at: XY,
  turnStep: Deg | null,
  reachStep: Mm | null = null,
): Level {
  switch (handle.kind) {
    case 'wall-end':
      return withWallEndAt(level, handle.id, handle.end, at);
    case 'jamb':
      return withJambAt(level, handle.id, handle.end, at);
    case 'stream':
      return withStreamTo(level, handle.id, at, turnStep, reachStep);
    default:
      return withShape(level, handle.id, (shape) => reshaped(shape, handle, at, turnStep));
  }
}

function reshaped(shape: Shape, handle: Handle, at: XY, turnStep: Deg | null): Shape {
  if ('circle' in shape && handle.kind === 'radius') {
    return {
      circle: { ...shape.circle, radius: Math.max(LEAST_SIZE / 2, roundCoordinate(distance(shape.circle.center, at))) },
    };
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

function turned(box: Box, at: XY, step: Deg | null): Box {
  return { ...box, turn: stepped(direction(box.center, at) + 90, step) };
}

function withStreamTo(level: Level, id: string, at: XY, turnStep: Deg | null, reachStep: Mm | null): Level {
  const fixtures = level.fixtures.map((fixture) => {
    if (fixture.id !== id || !fixture.stream) return fixture;
    const middle = shapeMiddle(fixture.shape);
    const far = distance(middle, at);
    const reach = Math.max(LEAST_SIZE, roundCoordinate(reachStep ? Math.round(far / reachStep) * reachStep : far));
    return { ...fixture, stream: { ...fixture.stream, direction: stepped(direction(middle, at), turnStep), reach } };
  });
  return { ...level, fixtures };
}

/** Rounds to a multiple of the step, 0 to 360 (excluded). */
function stepped(turn: Deg, step: Deg | null): Deg {
  const whole = step ? Math.round(turn / step) * step : turn;
  return roundCoordinate(fullTurn(whole));
}

function stretched(box: Box, index: number, at: XY): Box {
  const fixed = shapeRing({ box })[(index + 2) % 4] as XY;
  const [ux, uy] = axes(box.turn);
  const signs: XY = [index === 0 || index === 3 ? -1 : 1, index < 2 ? -1 : 1];
  const across = ((at[0] - fixed[0]) * ux + (at[1] - fixed[1]) * uy) * signs[0];
  const down = (-(at[0] - fixed[0]) * uy + (at[1] - fixed[1]) * ux) * signs[1];
  const width = Math.max(LEAST_SIZE, roundCoordinate(across));
  const depth = Math.max(LEAST_SIZE, roundCoordinate(down));
  const [i, j] = [(signs[0] * width) / 2, (signs[1] * depth) / 2];
  const center = roundPoint([fixed[0] + i * ux - j * uy, fixed[1] + i * uy + j * ux]);
  return { ...box, width, depth, center };
}

/**
 * Moves one end of a wall with every end that meets it. Openings of the walls concerned keep their position on the
 * page.
 */
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

function withJambAt(level: Level, id: string, end: 'near' | 'far', at: XY): Level {
  const openings = level.openings.map((opening) => {
    const wall = level.walls.find((each) => each.id === opening.wall);
    if (opening.id !== id || !wall) return opening;
    const pulled = roundCoordinate(nearestParameter(at, wall.from, wall.to) * distance(wall.from, wall.to));
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
  const turnedToo = (fixture: Fixture): Fixture => withStreamTurned(fixture, changed(fixture));
  const after: Level = {
    ...level,
    fixtures: sameIfUnchanged(level.fixtures, level.fixtures.map(turnedToo)),
    objects: sameIfUnchanged(level.objects, level.objects.map(changed)),
  };
  return withSupportedItems(level, after, new Set([id]));
}

function axes(turn: number): XY {
  const radians = (turn * Math.PI) / 180;
  return [Math.cos(radians), Math.sin(radians)];
}
