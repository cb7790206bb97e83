import type {
  Detector,
  Fixture,
  Level,
  Mm,
  Opening,
  PlanObject,
  RoomLabel,
  Shape,
  Wall,
  XY,
} from '../../../geometry/plan/model.ts';

/** A place that may have a room: its middle, and half its guaranteed width and depth. */
export interface Cell {
  readonly middle: XY;
  readonly reach: XY;
}

/** A level while it is generated, not rotated; `posed` rotates and moves all of it. */
export interface Draft {
  walls: Wall[];
  cells: Cell[];
  openings: Opening[];
  rooms: RoomLabel[];
  fixtures: Fixture[];
  objects: PlanObject[];
  detectors: Detector[];
}

export interface Pose {
  /** Rotation about the origin before the move, degrees clockwise on screen. */
  readonly turn: number;
  readonly move: XY;
}

export function emptyDraft(): Draft {
  return { walls: [], cells: [], openings: [], rooms: [], fixtures: [], objects: [], detectors: [] };
}

/** Returns an id that no wall of the draft has; ids sort as text, so that "w10" is before "w9". */
export function nextWallId({ walls }: Draft): string {
  return `w${Math.max(-1, ...walls.map(({ id }) => Number(id.slice(1)))) + 1}`;
}

/** Returns the draft as a level, rotated and moved. A rotation of 0 and no move leave every coordinate unchanged. */
export function posed(draft: Draft, pose: Pose): Pick<Level, keyof Omit<Draft, 'cells'>> {
  const cos = Math.cos((pose.turn * Math.PI) / 180);
  const sin = Math.sin((pose.turn * Math.PI) / 180);
  const at = ([x, y]: XY): XY => [x * cos - y * sin + pose.move[0], x * sin + y * cos + pose.move[1]];
  return {
    walls: draft.walls.map((wall) => ({ ...wall, from: at(wall.from), to: at(wall.to) })),
    openings: draft.openings,
    rooms: draft.rooms.map((room) => ({ ...room, at: at(room.at) })),
    fixtures: draft.fixtures.map((fixture) => ({
      ...fixture,
      shape: posedShape(fixture.shape, at, pose.turn),
      stream: fixture.stream && { ...fixture.stream, direction: fixture.stream.direction + pose.turn },
    })),
    objects: draft.objects.map((one) => ({ ...one, shape: posedShape(one.shape, at, pose.turn) })),
    detectors: draft.detectors.map((detector) => ({ ...detector, at: at(detector.at) })),
  };
}

function posedShape(shape: Shape, at: (p: XY) => XY, turn: number): Shape {
  if ('circle' in shape) return { circle: { ...shape.circle, center: at(shape.circle.center) } };
  if ('box' in shape) {
    return { box: { ...shape.box, center: at(shape.box.center), turn: shape.box.turn + turn } };
  }
  return { polygon: { points: shape.polygon.points.map(at) } };
}

/** Returns the point at `share`, 0 to 1, along a wall, `aside` mm off its center-line (clockwise side positive). */
export function alongWall({ from, to }: Pick<Wall, 'from' | 'to'>, share: number, aside: Mm = 0): XY {
  const length = Math.hypot(to[0] - from[0], to[1] - from[1]) || 1;
  const u: XY = [(to[0] - from[0]) / length, (to[1] - from[1]) / length];
  return [from[0] + (to[0] - from[0]) * share - u[1] * aside, from[1] + (to[1] - from[1]) * share + u[0] * aside];
}

export function wallLength({ from, to }: Pick<Wall, 'from' | 'to'>): Mm {
  return Math.hypot(to[0] - from[0], to[1] - from[1]);
}

/** Returns the distance from a point to a wall's center-line, mm. */
export function offWall(p: XY, { from, to }: Pick<Wall, 'from' | 'to'>): Mm {
  const [dx, dy] = [to[0] - from[0], to[1] - from[1]];
  const lengthSq = dx * dx + dy * dy;
  const t = lengthSq > 0 ? ((p[0] - from[0]) * dx + (p[1] - from[1]) * dy) / lengthSq : 0;
  const s = Math.min(1, Math.max(0, t));
  return Math.hypot(from[0] + dx * s - p[0], from[1] + dy * s - p[1]);
}
