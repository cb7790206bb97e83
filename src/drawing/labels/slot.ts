import type { XY } from '../../../geometry/plan/model.ts';
import { onEdge } from '../../../geometry/region/visible-edges.ts';
import { arc, type Part, ringsPart } from '../display-list.ts';

/** A rectangle that may be turned: mm of the plan, or px of the screen. */
export interface Slot {
  readonly x: number;
  readonly y: number;
  /** Full sizes along its own axes; `x`, `y` is its middle. */
  readonly width: number;
  readonly height: number;
  /** Degrees clockwise on screen. */
  readonly turn: number;
}
export type Size = Pick<Slot, 'width' | 'height'>;

export function slotAt({ width, height }: Size, [x, y]: XY, turn = 0): Slot {
  return { x, y, width, height, turn };
}

/** A thin slot along a line, so that nothing is written across it. */
export function lineSlot(from: XY, to: XY, height: number): Slot {
  const [dx, dy] = [to[0] - from[0], to[1] - from[1]];
  const middle: XY = [(from[0] + to[0]) / 2, (from[1] + to[1]) / 2];
  return slotAt({ width: Math.hypot(dx, dy), height }, middle, (Math.atan2(dy, dx) * 180) / Math.PI);
}

/** Returns a vector turned clockwise on screen by degrees. */
export function turned([x, y]: XY, degrees: number): XY {
  if (degrees === 0) return [x, y];
  const [cos, sin] = [Math.cos((degrees * Math.PI) / 180), Math.sin((degrees * Math.PI) / 180)];
  return [x * cos - y * sin, x * sin + y * cos];
}

/** Returns the corners clockwise from the upper left. */
export function slotCorners({ x, y, width, height, turn }: Slot): readonly [XY, XY, XY, XY] {
  const [ax, ay] = turned([width / 2, 0], turn);
  const [bx, by] = turned([0, height / 2], turn);
  return [
    [x - ax - bx, y - ay - by],
    [x + ax - bx, y + ay - by],
    [x + ax + bx, y + ay + by],
    [x - ax + bx, y - ay + by],
  ];
}

export function slotPart(slot: Slot): Part {
  return ringsPart([slotCorners(slot)]);
}

/** A slot with rounded corners. */
export function roundedPart({ turn, width, height, ...middle }: Slot, radius: number): Part {
  const within = slotCorners({ ...middle, turn, width: width - 2 * radius, height: height - 2 * radius });
  const arcs = within.map((corner, i) => arc(corner, radius, ((turn + 90 * (i + 2)) * Math.PI) / 180, Math.PI / 2));
  return ringsPart([arcs.flatMap((each) => [onEdge(each, 0), each])]);
}

/** Returns the turn of a text along a line at which it is not upside down, degrees; vertical text reads from the right, as on a drawing. */
export function uprightTurn(degrees: number): number {
  const turn = ((((degrees + 90) % 180) + 180) % 180) - 90;
  return turn > 89.9 - 1e-9 ? turn - 180 : turn;
}

/** Returns the turn of a text along a line, degrees. */
export function turnAlong(from: XY, to: XY): number {
  return uprightTurn(lineSlot(from, to, 0).turn);
}

/** Returns each x paired with each y. */
export function pairs(xs: readonly number[], ys: readonly number[]): readonly XY[] {
  return xs.flatMap((x) => ys.map((y): XY => [x, y]));
}

/**
 * Returns whether the edge of a slot is within an area, tested at its corners and at points between them, at most its height apart.
 * @param holds whether the area contains a point
 */
export function isInside(holds: (p: XY) => boolean, slot: Slot): boolean {
  const corners = slotCorners(slot);
  return corners.every(([x, y], i) => {
    const [nx, ny] = corners[(i + 1) % 4] ?? [x, y];
    const steps = Math.max(1, Math.ceil(Math.hypot(nx - x, ny - y) / slot.height));
    for (let k = 0; k < steps; k++) if (!holds([x + ((nx - x) * k) / steps, y + ((ny - y) * k) / steps])) return false;
    return true;
  });
}

/** Returns the point at which the line from a slot's middle to a point leaves the slot; the point itself if it is within. */
export function edgeToward({ x, y, width, height, turn }: Slot, [px, py]: XY): XY {
  const [dx, dy] = turned([px - x, py - y], -turn);
  const share = Math.min(width / 2 / Math.max(Math.abs(dx), 1e-9), height / 2 / Math.max(Math.abs(dy), 1e-9), 1);
  return [x + (px - x) * share, y + (py - y) * share];
}
