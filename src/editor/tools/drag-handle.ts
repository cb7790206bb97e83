import { type Handle, withHandleAt } from '../../../geometry/edit/reshape.ts';
import type { Level, XY } from '../../../geometry/plan/model.ts';
import { shapeMiddle } from '../../../geometry/plane/body.ts';
import type { Line } from '../../../geometry/plane/types.ts';
import { wallOtherEnd } from '../../../geometry/snap/pick.ts';
import { facesAbout } from '../../../geometry/snap/room-faces.ts';
import { RIGHT_ANGLES, snapPoint } from '../../../geometry/snap/snap-point.ts';
import { refuseLocked } from '../../state/locked-detectors.ts';
import { selectModel } from '../../state/selectors.ts';
import { useSketch } from '../overlay/sketch.ts';
import { type Drag, levelDrag, NO_DRAG } from './drag.ts';
import { handleMeasure } from './handle-measure.ts';
import { currentLevel, gridFor, store, targets } from './tool-context.ts';
import type { ToolPoint } from './tool-controller.ts';

/** Rotations snap to whole steps of this, degrees. */
const TURN_STEP = 15;

/**
 * Drags a handle: the end of a wall, a jamb, a corner, the rotation or the rim of an item. What carries a locked detector is not turned.
 * @param offset from the place where the handle is shown to its point, mm: a handle that is shown beside its point moves by as much as the
 * pointer
 */
export function dragHandle(handle: Handle, [dx, dy]: XY = [0, 0]): Drag {
  if (handle.kind === 'turn' && refuseLocked(store(), [handle.id])) return NO_DRAG;
  const level = currentLevel();
  const held = targets(new Set([handle.id]));
  return levelDrag((at, pointer) => {
    const point = { ...pointer, plan: [pointer.plan[0] + dx, pointer.plan[1] + dy] as const };
    const turnStep = point.free ? null : TURN_STEP;
    const pulled = withHandleAt(at, handle, wanted(level, handle, point, held), turnStep, gridFor(point));
    useSketch.setState({ reading: handleMeasure(pulled, handle) });
    return pulled;
  });
}

/** Wall faces of the room that an item is in: its corner must not snap through the wall to the face behind. */
function facesOf({ fixtures, objects }: Level, id: string): readonly Line[] {
  const thing = [...fixtures, ...objects].find((each) => each.id === id);
  return (thing && facesAbout(selectModel(store()), shapeMiddle(thing.shape))?.lines) ?? [];
}

function wanted(level: Level, handle: Handle, point: ToolPoint, held: ReturnType<typeof targets>): XY {
  if (point.free || handle.kind === 'turn' || handle.kind === 'stream') return point.plan;
  const other = handle.kind === 'wall-end' ? wallOtherEnd(level, handle.id, handle.end) : null;
  const things = handle.kind === 'corner' || handle.kind === 'radius';
  const snapped = snapPoint(
    point.plan,
    {
      ends: things || handle.kind === 'jamb' ? [] : held.ends,
      centerLines: things ? facesOf(level, handle.id) : [],
      faces: [],
    },
    { reach: point.reach, grid: gridFor(point), from: other, directions: other ? RIGHT_ANGLES : [] },
  );
  useSketch.setState({ guides: snapped.guides });
  return snapped.at;
}
