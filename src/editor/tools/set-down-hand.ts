import { capital, ROOM_USE_NOUN } from '../../../geometry/messages/index.ts';
import { USUAL_DETECTOR } from '../../../geometry/plan/items.ts';
import type { Detector, RoomUse, Shape, XY } from '../../../geometry/plan/model.ts';
import { shapeBody, shapeRing } from '../../../geometry/plane/body.ts';
import { roundPoint } from '../../../geometry/plane/point.ts';
import { translateShape } from '../../../geometry/plane/rigid-motion.ts';
import { ringsContain } from '../../../geometry/plane/ring.ts';
import { outlineOf } from '../../../geometry/snap/past-face.ts';
import { facesAbout } from '../../../geometry/snap/room-faces.ts';
import { seatHeight } from '../../../geometry/snap/sit-on.ts';
import { onGrid } from '../../../geometry/snap/snap.ts';
import { snapMove } from '../../../geometry/snap/snap-move.ts';
import { turnAlongFace } from '../../../geometry/snap/turn-along.ts';
import { OBJECT_DEFAULTS, type UsualSize, usualHeights, usualShape } from '../../state/defaults.ts';
import { nextLabel } from '../../state/plan-slice.ts';
import { fixtureLike, objectLike } from '../../state/same-again.ts';
import { selectModel } from '../../state/selectors.ts';
import type { Tool } from '../../state/tool.ts';
import { askForThing } from '../lengths/set-out.ts';
import { clearSketch, useSketch } from '../sketch.ts';
import { currentLevel, gridFor, type Hand, type Point, putBack, staysInHand, store } from './hand.ts';
import { tapedShape } from './taped.ts';

type SetDownTool = Extract<Tool, { kind: 'fixture' | 'object' | 'room' | 'detector' }>;

/** A thing that follows the pointer and is set down by a press. Shift, or a thing that is kept in hand, leaves it there for the next one. */
export function createSetDownHand(tool: SetDownTool): Hand {
  let quarterTurns = 0;
  let last: Point | null = null;
  const show = (point: Point) => {
    last = point;
    showGhost(tool, point, quarterTurns);
  };
  return {
    hover: show,
    down: show,
    drag: show,
    up: (point) => {
      const id = setDown(tool, point, quarterTurns);
      clearSketch();
      // A finger types only when it asks for a field: the keys would cover half the sheet.
      if (id && !point.touch) askForThing(id);
      if (!staysInHand(point)) putBack();
    },
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

function showGhost(tool: SetDownTool, point: Point, turns: number): void {
  if (tool.kind === 'detector') {
    useSketch.setState({ ghostDetector: newDetector(point) });
  } else if (tool.kind === 'room') {
    useSketch.setState({ ghostName: { name: capital(ROOM_USE_NOUN[tool.use]), at: point.plan } });
  } else {
    const size = sizeOf(tool);
    const shape = settledShape(size, point, turns);
    useSketch.setState({ ghost: shape, gaps: tapedShape(shape) });
  }
}

/** Answers the id of a thing that has a place to be typed; empty for a name, and where it was refused. */
function setDown(tool: SetDownTool, point: Point, turns: number): string {
  const { addItem } = store();
  switch (tool.kind) {
    case 'detector':
      return addItem('detectors', newDetector(point));
    case 'room':
      nameRoom(tool.use, roundPoint(point.plan));
      return '';
    case 'fixture': {
      const size = sizeOf(tool);
      const heights = usualHeights(size, currentLevel().ceiling);
      const shape = settledShape(size, point, turns);
      return addItem('fixtures', { kind: tool.fixture, name: '', shape, ...heights, stream: null });
    }
    case 'object': {
      const size = sizeOf(tool);
      const shape = settledShape(size, point, turns);
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

function sizeOf(tool: Extract<SetDownTool, { kind: 'fixture' | 'object' }>): UsualSize {
  const level = currentLevel();
  return tool.kind === 'fixture' ? fixtureLike(level, tool.fixture) : objectLike(level, tool.object);
}

/** Drawn up to the wall that it comes near, on the side of the hand, its longer side along it. */
function settledShape(size: UsualSize, point: Point, quarterTurns: number): Shape {
  const faces = facesAbout(selectModel(store()), point.plan);
  const near = reachOf(size) + point.reach;
  const along = point.free ? 0 : turnAlongFace(faces?.lines ?? [], point.plan, near, isDeep(size));
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

function newDetector(point: Point): Omit<Detector, 'id'> {
  const level = currentLevel();
  const at = onGrid(point.plan, gridFor(point));
  const base = seatHeight(level, at, USUAL_DETECTOR.base);
  return { label: nextLabel(level), at, ...USUAL_DETECTOR, base, pair: null };
}
