import { capital, ROOM_USE_NOUN } from '../../../geometry/messages/index.ts';
import type { Detector, RoomUse, Shape, XY } from '../../../geometry/plan/model.ts';
import { shapeBody, shapeRing } from '../../../geometry/plane/body.ts';
import { roundPoint } from '../../../geometry/plane/point.ts';
import { translateShape } from '../../../geometry/plane/rigid-motion.ts';
import { ringsContain } from '../../../geometry/plane/ring.ts';
import { angleAlongFace } from '../../../geometry/snap/align-to-face.ts';
import { outlineOf } from '../../../geometry/snap/face-gap.ts';
import { facesAbout } from '../../../geometry/snap/room-faces.ts';
import { snapMove } from '../../../geometry/snap/snap-move.ts';
import { onGrid } from '../../../geometry/snap/snap-point.ts';
import { OBJECT_DEFAULTS, type UsualSize, usualHeights, usualShape } from '../../state/defaults.ts';
import { fixtureLike, objectLike } from '../../state/last-sizes.ts';
import { newDetector } from '../../state/place-detector.ts';
import { selectModel } from '../../state/selectors.ts';
import type { Tool } from '../../state/tool.ts';
import { askForThing } from '../lengths/set-out.ts';
import { clearSketch, useSketch } from '../overlay/sketch.ts';
import { currentLevel, gridFor, keepsTool, returnToSelect, store } from './tool-context.ts';
import type { ToolController, ToolPoint } from './tool-controller.ts';
import { gapsOfShape } from './wall-gaps.ts';

type PlaceTool = Extract<Tool, { kind: 'fixture' | 'object' | 'room' | 'detector' }>;

/** An item that follows the pointer and is placed by a press. With Shift, or when the tool is kept, the tool stays for the next one. */
export function createPlaceTool(tool: PlaceTool): ToolController {
  let quarterTurns = 0;
  let last: ToolPoint | null = null;
  const show = (point: ToolPoint) => {
    last = point;
    showPreview(tool, point, quarterTurns);
  };
  return {
    hover: show,
    down: show,
    drag: show,
    up: (point) => {
      const id = placeItem(tool, point, quarterTurns);
      clearSketch();
      if (id) askForThing(id);
      if (!keepsTool(point)) returnToSelect();
    },
    out: clearSketch,
    cancel: () => {
      clearSketch();
      return false;
    },
    key: (event) => {
      if (event.key.toLowerCase() !== 'r' || event.ctrlKey || event.metaKey) return false;
      quarterTurns += 1;
      if (last) show(last);
      return true;
    },
  };
}

function showPreview(tool: PlaceTool, point: ToolPoint, turns: number): void {
  if (tool.kind === 'detector') {
    useSketch.setState({ previewDetector: detectorAt(point) });
  } else if (tool.kind === 'room') {
    useSketch.setState({ previewName: { name: capital(ROOM_USE_NOUN[tool.use]), at: point.plan } });
  } else {
    const size = sizeOf(tool);
    const shape = snappedShape(size, point, turns);
    useSketch.setState({ previewShape: shape, gaps: gapsOfShape(shape) });
  }
}

/** Adds the item. Returns its id if its place can be typed; empty for a room name, or if the edit is refused. */
function placeItem(tool: PlaceTool, point: ToolPoint, turns: number): string {
  const { addItem } = store();
  switch (tool.kind) {
    case 'detector':
      return addItem('detectors', detectorAt(point));
    case 'room':
      nameRoom(tool.use, roundPoint(point.plan));
      return '';
    case 'fixture': {
      const size = sizeOf(tool);
      const heights = usualHeights(size, currentLevel().ceiling);
      const shape = snappedShape(size, point, turns);
      return addItem('fixtures', { kind: tool.fixture, name: '', shape, ...heights, stream: null });
    }
    case 'object': {
      const size = sizeOf(tool);
      const shape = snappedShape(size, point, turns);
      return addItem('objects', {
        name: OBJECT_DEFAULTS[tool.object].name,
        shape,
        ...usualHeights(size, currentLevel().ceiling),
      });
    }
  }
}

/** A room that has a name already gets the new use; a name outside every room is refused. */
function nameRoom(use: RoomUse, at: XY): void {
  const room = selectModel(store()).rooms.find(({ floorRings }) => ringsContain(floorRings, at));
  if (!room) {
    store().say('There is no closed room there. Press inside a room, or close the walls around it first.');
    return;
  }
  const name = capital(ROOM_USE_NOUN[use]);
  if (room.label) {
    store().updateItem(room.label.id, { use, name });
    store().select([room.label.id]);
    return;
  }
  store().addItem('rooms', { name, use, at });
}

function sizeOf(tool: Extract<PlaceTool, { kind: 'fixture' | 'object' }>): UsualSize {
  const level = currentLevel();
  return tool.kind === 'fixture' ? fixtureLike(level, tool.fixture) : objectLike(level, tool.object);
}

/** The shape at the pointer, snapped to a wall nearby on the pointer's side, with its longer side along the wall. */
function snappedShape(size: UsualSize, point: ToolPoint, quarterTurns: number): Shape {
  const faces = facesAbout(selectModel(store()), point.plan);
  const near = reachOf(size) + point.reach;
  const along = point.free ? 0 : angleAlongFace(faces?.lines ?? [], point.plan, near, isDeep(size));
  const shape = usualShape(size, roundPoint(point.plan), (along + quarterTurns * 90) % 360);
  if (point.free) return shape;
  const options = { reach: point.reach * 1.5, grid: gridFor(point) };
  const { by } = snapMove([outlineOf(shape)], shapeRing(shape)[0] ?? null, [0, 0], faces, options);
  return translateShape(shape, by);
}

function reachOf(size: UsualSize): number {
  const { minX, maxX, minY, maxY } = shapeBody(usualShape(size, [0, 0])).extent;
  return Math.max(maxX - minX, maxY - minY) / 2;
}

function isDeep({ footprint }: UsualSize): boolean {
  return 'depth' in footprint && footprint.depth > footprint.width;
}

function detectorAt(point: ToolPoint): Omit<Detector, 'id'> {
  return newDetector(store().plan, currentLevel(), onGrid(point.plan, gridFor(point)));
}
