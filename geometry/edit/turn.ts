import { withFootprintSize } from '../dimension/footprint.ts';
import { itemById, itemName } from '../plan/items.ts';
import type { Deg, Fixture, Level, Mm, Plan, Shape, Wall, XY } from '../plan/model.ts';
import { assert } from '../plane/assert.ts';
import { ringExtent, shapeMiddle } from '../plane/body.ts';
import { along } from '../plane/point.ts';
import type { EditResult } from './checked.ts';
import { withItem } from './item.ts';
import { levelChanged, levelOf } from './level.ts';
import { settled, wallLaid } from './move.ts';

/** A footprint as it is measured: `across` of a round one, `width` and `depth` of any other. Mm. */
export interface ItemSize {
  readonly across?: Mm;
  readonly width?: Mm;
  readonly depth?: Mm;
}

/**
 * A fixture, an object or a wall turned about its middle, degrees clockwise on screen; a stream turns with its fixture, and
 * ends of other walls that meet a turned wall come along. Refused for what has nothing to turn.
 */
export function turnedItem(plan: Plan, levelId: string, id: string, by: Deg): EditResult {
  const found = itemById(levelOf(plan, levelId), id);
  assert(found !== null, `level ${levelId} has nothing with the id ${id}`);
  const { kind, item } = found;
  switch (kind) {
    case 'fixture':
      return withItem(plan, levelId, kind, {
        ...item,
        shape: turnedShape(item.shape, by),
        stream: turnedStream(item, by),
      });
    case 'object':
      return withItem(plan, levelId, kind, { ...item, shape: turnedShape(item.shape, by) });
    case 'wall':
      return levelChanged(plan, levelId, (level) => settled(level, withWallTurned(level, item, by)));
    case 'opening':
      return { ok: false, reason: `${itemName(kind, item)} turns with its wall. Turn the wall.` };
    default:
      return { ok: false, reason: `${itemName(kind, item)} has no direction: there is nothing to turn.` };
  }
}

/** A fixture or an object made another size about its middle. What does not belong to its form is passed over. */
export function resizedItem(plan: Plan, levelId: string, id: string, size: ItemSize): EditResult {
  const found = itemById(levelOf(plan, levelId), id);
  assert(found?.kind === 'fixture' || found?.kind === 'object', `level ${levelId} has no fixture or object ${id}`);
  const shape = resizedShape(found.item.shape, size);
  return found.kind === 'fixture'
    ? withItem(plan, levelId, 'fixture', { ...found.item, shape })
    : withItem(plan, levelId, 'object', { ...found.item, shape });
}

function resizedShape(shape: Shape, size: ItemSize): Shape {
  if (!('polygon' in shape)) return withFootprintSize(shape, size);
  const { points } = shape.polygon;
  const { minX, maxX, minY, maxY } = ringExtent(points);
  const [x, y] = shapeMiddle(shape);
  const across = stretch(size.width, maxX - minX);
  const down = stretch(size.depth, maxY - minY);
  return {
    ...shape,
    polygon: { ...shape.polygon, points: points.map(([px, py]) => [x + (px - x) * across, y + (py - y) * down]) },
  };
}

function stretch(wanted: Mm | undefined, now: Mm): number {
  return wanted === undefined || now === 0 ? 1 : wanted / now;
}

function turnedShape(shape: Shape, by: Deg): Shape {
  if ('circle' in shape) return shape;
  if ('box' in shape) return { ...shape, box: { ...shape.box, turn: wholeTurn(shape.box.turn + by) } };
  const middle = shapeMiddle(shape);
  return {
    ...shape,
    polygon: { ...shape.polygon, points: shape.polygon.points.map((point) => turnedPoint(point, middle, by)) },
  };
}

function turnedStream({ stream }: Fixture, by: Deg): Fixture['stream'] {
  return stream && { ...stream, direction: wholeTurn(stream.direction + by) };
}

function withWallTurned(level: Level, wall: Wall, by: Deg): Level {
  const middle = along(wall.from, wall.to, 0.5);
  const [from, to] = [turnedPoint(wall.from, middle, by), turnedPoint(wall.to, middle, by)];
  const turned = wallLaid(level, wall.id, from, to);
  // The wall is as long as before: its own openings stay where they are along it.
  const offsets = new Map(level.openings.map(({ id, offset }) => [id, offset]));
  const openings = turned.openings.map((opening) =>
    opening.wall === wall.id ? { ...opening, offset: offsets.get(opening.id) ?? opening.offset } : opening,
  );
  return { ...turned, openings };
}

/** Quarter turns are exact: a cabinet turned four times stands where it stood. */
function turnedPoint([x, y]: XY, [cx, cy]: XY, by: Deg): XY {
  const quarters = [
    [1, 0],
    [0, 1],
    [-1, 0],
    [0, -1],
  ] as const; // prettier-ignore
  const turn = wholeTurn(by);
  const [cos, sin] = quarters[turn / 90] ?? [Math.cos((turn * Math.PI) / 180), Math.sin((turn * Math.PI) / 180)];
  return [cx + (x - cx) * cos - (y - cy) * sin, cy + (x - cx) * sin + (y - cy) * cos];
}

/** The same direction, 0 up to 360. */
function wholeTurn(angle: Deg): Deg {
  return ((angle % 360) + 360) % 360;
}
