import { shapeRing } from '../../../geometry/body.ts';
import { withItemsMoved } from '../../../geometry/move-items.ts';
import type { Level, XY } from '../../../geometry/plan/model.ts';
import { snapMove } from '../../../geometry/snap-move.ts';
import { useSketch } from '../sketch.ts';
import { type Drag, levelDrag } from './drag.ts';
import { currentLevel, gridFor, type Point, targets } from './hand.ts';
import { tapedThing } from './taped.ts';

/** Moves items together. Things are drawn up to wall faces, walls and their rooms go by whole steps of the grid. */
export function moveItems(ids: readonly string[], start: Point): Drag {
  const moving = new Set(ids);
  const held = targets(moving);
  const level = currentLevel();
  const corners = cornersOf(level, moving);
  const onlyThings = level.walls.every(({ id }) => !moving.has(id));
  const taped = (moved: Level): Level => {
    useSketch.setState({ gaps: tapedThing(moved, ids) });
    return moved;
  };
  return levelDrag((at, point) => {
    const by: XY = [point.plan[0] - start.plan[0], point.plan[1] - start.plan[1]];
    if (point.free) return taped(withItemsMoved(at, moving, by));
    const faces = onlyThings ? held.faces : [];
    const snapped = snapMove(corners, by, { ...held, faces }, { reach: point.reach, grid: gridFor(point) });
    useSketch.setState({ guides: snapped.guides });
    return taped(withItemsMoved(at, moving, snapped.by));
  });
}

/** The points that snap: corners of things, ends of walls, middles of detectors, names and openings. The first leads on the grid. */
function cornersOf(level: Level, moving: ReadonlySet<string>): readonly XY[] {
  const chosen = <T extends { readonly id: string }>(items: readonly T[]) => items.filter(({ id }) => moving.has(id));
  return [
    ...chosen([...level.fixtures, ...level.objects]).flatMap(({ shape }) => shapeRing(shape)),
    ...chosen(level.walls).flatMap(({ from, to }) => [from, to]),
    ...chosen([...level.detectors, ...level.rooms]).map(({ at }) => at),
  ];
}
