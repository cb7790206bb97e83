/** The edges of the spaces that light crosses: floors, jambs, sides of openings. */
import type { XY } from '../plan/model.ts';
import type { FloorPlan } from './floor-edges.ts';
import { type Glass, toGlass } from './glass.ts';

/** An edge of a space that light crosses, in the axes of a glass. */
export interface Edge {
  readonly a: XY;
  readonly b: XY;
  /** Unit normal, toward the floor of a room. */
  readonly nx: number;
  readonly ny: number;
  /** The openings at the edge; empty for a wall or a jamb. */
  readonly openings: readonly number[];
  /** The room whose floor it bounds; −1 for a jamb. */
  readonly room: number;
}

/** The room of an edge that bounds no floor. */
export const JAMB = -1;

/** Returns an edge of a floor, with the floor on its right seen from a to b. */
export function edgeFrom(a: XY, b: XY, openings: readonly number[], room: number): Edge {
  const [dx, dy] = [b[0] - a[0], b[1] - a[1]];
  const long = Math.hypot(dx, dy) || 1;
  return { a, b, nx: -dy / long, ny: dx / long, openings, room };
}

/** Returns the edges of an opening as light crosses it: its two jambs, and the floors at it. */
export function doorEdgesOf(glass: Glass, body: readonly XY[], plan: FloorPlan, opening: number): readonly Edge[] {
  const [a, b, c, d] = body.map((p) => toGlass(glass, p)) as [XY, XY, XY, XY];
  const floors = (plan.doorways[opening] ?? []).map(({ room, edge }) =>
    edgeFrom(toGlass(glass, edge.a), toGlass(glass, edge.b), edge.openings, room),
  );
  return [edgeFrom(a, d, [], JAMB), edgeFrom(b, c, [], JAMB), ...floors];
}

/** Returns the sides of an opening's body, with the body on their right. */
export function doorSidesOf(glass: Glass, body: readonly XY[]): readonly Edge[] {
  const corners = body.map((p) => toGlass(glass, p));
  return corners.map((a, i) => edgeFrom(a, corners[(i + 1) % corners.length] as XY, [], JAMB));
}

/** Returns a point with y reversed. */
export function turned([x, y]: XY): XY {
  return [x, -y];
}
