import { withFootprintSize } from '../dimension/footprint.ts';
import { itemById, itemName } from '../plan/items.ts';
import type { Deg, Fixture, Level, Mm, Plan, Shape, Wall, XY } from '../plan/model.ts';
import { assert } from '../plane/assert.ts';
import { fullTurn } from '../plane/bearing.ts';
import { shapeMiddle } from '../plane/body.ts';
import { ringExtent } from '../plane/extent.ts';
import { along } from '../plane/point.ts';
import type { EditResult } from './checked.ts';
import { withItem } from './item.ts';
import { checkedLevelEdit, levelOf } from './level.ts';
import { wallEndsMoved, withIdentityKept } from './move.ts';

/** A footprint size, mm: `across` for a circle, `width` and `depth` for anything else. */
export interface ItemSize {
  readonly across?: Mm;
  readonly width?: Mm;
  readonly depth?: Mm;
}

/**
 * Rotates a fixture, an object or a wall about its middle, degrees clockwise on screen; a stream rotates with its
 * fixture, and ends of other walls that meet the wall follow. Refused for items without a direction.
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
      return checkedLevelEdit(plan, levelId, (level) => withIdentityKept(level, withWallTurned(level, item, by)));
    case 'opening':
      return { ok: false, reason: `${itemName(kind, item)} turns with its wall. Turn the wall.` };
    default:
      return { ok: false, reason: `${itemName(kind, item)} has no direction: there is nothing to turn.` };
  }
}

/** Resizes a fixture or an object about its middle. Dimensions that its form does not have are ignored. */
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
  if ('box' in shape) return { ...shape, box: { ...shape.box, turn: fullTurn(shape.box.turn + by) } };
  const middle = shapeMiddle(shape);
  return {
    ...shape,
    polygon: { ...shape.polygon, points: shape.polygon.points.map((point) => rotatedPoint(point, middle, by)) },
  };
}

function turnedStream({ stream }: Fixture, by: Deg): Fixture['stream'] {
  return stream && { ...stream, direction: fullTurn(stream.direction + by) };
}

function withWallTurned(level: Level, wall: Wall, by: Deg): Level {
  const middle = along(wall.from, wall.to, 0.5);
  const [from, to] = [rotatedPoint(wall.from, middle, by), rotatedPoint(wall.to, middle, by)];
  const turned = wallEndsMoved(level, wall.id, from, to);
  // The length is unchanged, so its openings keep their offsets.
  const offsets = new Map(level.openings.map(({ id, offset }) => [id, offset]));
  const openings = turned.openings.map((opening) =>
    opening.wall === wall.id ? { ...opening, offset: offsets.get(opening.id) ?? opening.offset } : opening,
  );
  return { ...turned, openings };
}

/** Quarter turns are exact: four of them give the original position. */
function rotatedPoint([x, y]: XY, [cx, cy]: XY, by: Deg): XY {
  const quarters = [
    [1, 0],
    [0, 1],
    [-1, 0],
    [0, -1],
  ] as const;
  const turn = fullTurn(by);
  const [cos, sin] = quarters[turn / 90] ?? [Math.cos((turn * Math.PI) / 180), Math.sin((turn * Math.PI) / 180)];
  return [cx + (x - cx) * cos - (y - cy) * sin, cy + (x - cx) * sin + (y - cy) * cos];
}
