import { withItemsMoved } from '../../../geometry/edit/move-items.ts';
import type { Level, XY } from '../../../geometry/plan/model.ts';
import { shapeRing } from '../../../geometry/plane/body.ts';
import { type Outline, outlineOf } from '../../../geometry/snap/face-gap.ts';
import { facesAbout } from '../../../geometry/snap/room-faces.ts';
import { snapMove } from '../../../geometry/snap/snap-move.ts';
import { selectModel } from '../../state/selectors.ts';
import { useSketch } from '../overlay/sketch.ts';
import { type Drag, levelDrag } from './drag.ts';
import { currentLevel, gridFor, store } from './tool-context.ts';
import type { ToolPoint } from './tool-controller.ts';
import { gapsOfItem } from './wall-gaps.ts';

/** Drags items together. Each pointer move previews them where `snappedMove` puts them. */
export function dragItems(ids: readonly string[], start: ToolPoint): Drag {
  const moving = new Set(ids);
  const settle = snappedMove(currentLevel(), ids);
  return levelDrag((at, point) => {
    const by = settle([point.plan[0] - start.plan[0], point.plan[1] - start.plan[1]], point);
    const moved = withItemsMoved(at, moving, by);
    useSketch.setState({ gaps: gapsOfItem(moved, ids) });
    return moved;
  });
}

/**
 * Returns a function that snaps a move of items, mm, and shows the guides: things snap to the wall faces on the pointer's side, walls
 * and their rooms to the grid.
 * @param leader the point that snaps to the grid; by default a corner of the first item
 */
export function snappedMove(
  level: Level,
  ids: readonly string[],
  leader?: XY | null,
): (by: XY, point: ToolPoint) => XY {
  const moving = new Set(ids);
  const model = selectModel(store());
  const things = outlinesOf(level, moving);
  const lead = leader ?? leadOf(level, moving);
  const onlyThings = level.walls.every(({ id }) => !moving.has(id));
  return (by, point) => {
    if (point.free) return by;
    const faces = onlyThings ? facesAbout(model, point.plan) : null;
    const snapped = snapMove(things, lead, by, faces, { reach: point.reach, grid: gridFor(point) });
    useSketch.setState({ guides: snapped.guides });
    return snapped.by;
  };
}

function chosenOf<T extends { readonly id: string }>(items: readonly T[], moving: ReadonlySet<string>): readonly T[] {
  return items.filter(({ id }) => moving.has(id));
}

function outlinesOf({ fixtures, objects }: Level, moving: ReadonlySet<string>): readonly Outline[] {
  return chosenOf([...fixtures, ...objects], moving).map(({ shape }) => outlineOf(shape));
}

/** The point that snaps to the grid: a corner of a thing, an end of a wall, the middle of a detector or of a name. */
function leadOf(level: Level, moving: ReadonlySet<string>): XY | null {
  const [thing] = chosenOf([...level.fixtures, ...level.objects], moving);
  const [wall] = chosenOf(level.walls, moving);
  const [spot] = chosenOf([...level.detectors, ...level.rooms], moving);
  return (thing && shapeRing(thing.shape)[0]) ?? wall?.from ?? spot?.at ?? null;
}
