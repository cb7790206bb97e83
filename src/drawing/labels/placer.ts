import type { XY } from '../../../geometry/plan/model.ts';

/**
 * Finds free places for labels. Everything that must not be written over is a slot: a rectangle that may be turned. Lengths are in units of
 * the medium. Greedy: what is placed first keeps its place.
 */
export interface Slot {
  readonly x: number;
  readonly y: number;
  /** Full sizes along its own axes; `x`, `y` is its middle. */
  readonly width: number;
  readonly height: number;
  /** Degrees clockwise on screen. */
  readonly turn: number;
}

/** An upright rectangle. */
export interface Area {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

/**
 * What takes ground: edges of zones and of the white, the floor under things, their outlines, walls, thin lines, symbols of detectors, and ink
 * that is never written over.
 */
export type Ground = 'edge' | 'thing' | 'outline' | 'wall' | 'line' | 'symbol' | 'ink';

export interface Placer {
  readonly area: Area | null;
  /** Whether the slot lies in the area with nothing taken under it, but for the kinds of ground and the one owner that do not count. */
  readonly isFree: (slot: Slot, over?: readonly Ground[], owner?: string) => boolean;
  readonly take: (slot: Slot, ground?: Ground, owner?: string) => void;
  /** Whether no line of this kind of ground runs along the slot: those that meet it cross it. */
  readonly isCrossedSteeply: (slot: Slot, ground: Ground) => boolean;
}

/** A leader may cross whatever is neither writing nor another symbol. */
export const LEADER_OVER: readonly Ground[] = ['edge', 'thing', 'outline', 'wall', 'line'];

/** A slot with what is asked of it again and again: the sine and cosine of its turn, and how far it reaches. */
interface Placed {
  readonly slot: Slot;
  readonly cos: number;
  readonly sin: number;
  readonly reachX: number;
  readonly reachY: number;
}
interface Taken extends Placed {
  readonly owner: string | undefined;
}

const GROUNDS: readonly Ground[] = ['ink', 'outline', 'wall', 'thing', 'line', 'symbol', 'edge'];

/** @param cell width of the squares by which taken slots are looked up @param area nothing is placed beyond it; null for no bound */
export function createPlacer(area: Area | null, cell = 10): Placer {
  // Each kind of ground by itself: what does not count is not looked at.
  const cells = new Map(GROUNDS.map((ground) => [ground, new Map<number, Taken[]>()]));
  const isTaken = (placed: Placed, ground: Ground, counts: (taken: Taken) => boolean): boolean => {
    const ofGround = cells.get(ground);
    if (!ofGround || ofGround.size === 0) return false;
    const { left, right, top, bottom } = cellsOf(placed, cell);
    for (let i = left; i <= right; i++) {
      for (let j = top; j <= bottom; j++) {
        const standing = ofGround.get(cellKey(i, j));
        if (standing) for (const taken of standing) if (meet(placed, taken) && counts(taken)) return true;
      }
    }
    return false;
  };
  return {
    area,
    isFree: (slot, over = [], owner) => {
      const placed = placedAt(slot);
      if (area && !liesIn(area, placed)) return false;
      const counts = (taken: Taken) => owner === undefined || taken.owner !== owner;
      return !GROUNDS.some((ground) => !over.includes(ground) && isTaken(placed, ground, counts));
    },
    take: (slot, ground = 'ink', owner) => {
      const taken: Taken = { ...placedAt(slot), owner };
      const ofGround = cells.get(ground);
      const { left, right, top, bottom } = cellsOf(taken, cell);
      for (let i = left; i <= right; i++) {
        for (let j = top; j <= bottom; j++) {
          const standing = ofGround?.get(cellKey(i, j));
          if (standing) standing.push(taken);
          else ofGround?.set(cellKey(i, j), [taken]);
        }
      }
    },
    isCrossedSteeply: (slot, ground) =>
      !isTaken(placedAt(slot), ground, (taken) => !isSteep(taken.slot.turn - slot.turn)),
  };
}

/** Whether lines that differ by so many degrees cross at 35 degrees or more. */
function isSteep(degrees: number): boolean {
  return Math.abs(Math.sin((degrees * Math.PI) / 180)) > 0.57;
}

/** A thin slot along a line, so that nothing is written across it. */
export function lineSlot([x1, y1]: XY, [x2, y2]: XY, width = 0.6): Slot {
  return {
    x: (x1 + x2) / 2,
    y: (y1 + y2) / 2,
    width: Math.hypot(x2 - x1, y2 - y1),
    height: width,
    turn: (Math.atan2(y2 - y1, x2 - x1) * 180) / Math.PI,
  };
}

/** From its upper left on, clockwise. */
export function slotCorners({ x, y, width, height, turn }: Slot): readonly [XY, XY, XY, XY] {
  const [ux, uy] = turn === 0 ? [1, 0] : [Math.cos((turn * Math.PI) / 180), Math.sin((turn * Math.PI) / 180)];
  const [ax, ay] = [(ux * width) / 2, (uy * width) / 2];
  const [bx, by] = [(-uy * height) / 2, (ux * height) / 2];
  return [
    [x - ax - bx, y - ay - by],
    [x + ax - bx, y + ay - by],
    [x + ax + bx, y + ay + by],
    [x - ax + bx, y - ay + by],
  ];
}

/** Separating axes: two convex shapes are apart when a line parallel to one of their sides parts them. */
export function overlap(a: Slot, b: Slot): boolean {
  return meet(placedAt(a), placedAt(b));
}

function placedAt(slot: Slot): Placed {
  const { width, height, turn } = slot;
  const [cos, sin] = turn === 0 ? [1, 0] : [Math.cos((turn * Math.PI) / 180), Math.sin((turn * Math.PI) / 180)];
  const [c, s] = [Math.abs(cos), Math.abs(sin)];
  return { slot, cos, sin, reachX: (width * c + height * s) / 2, reachY: (width * s + height * c) / 2 };
}

function meet(a: Placed, b: Placed): boolean {
  const dx = b.slot.x - a.slot.x;
  const dy = b.slot.y - a.slot.y;
  if (Math.abs(dx) >= a.reachX + b.reachX || Math.abs(dy) >= a.reachY + b.reachY) return false;
  if (a.slot.turn === 0 && b.slot.turn === 0) return true;
  const cos = Math.abs(a.cos * b.cos + a.sin * b.sin);
  const sin = Math.abs(a.cos * b.sin - a.sin * b.cos);
  return meetAlong(a, b.slot, dx, dy, cos, sin) && meetAlong(b, a.slot, dx, dy, cos, sin);
}

/** Whether the two overlap when seen along both axes of the first. */
function meetAlong(a: Placed, b: Slot, dx: number, dy: number, cos: number, sin: number): boolean {
  const across = Math.abs(dx * a.cos + dy * a.sin) * 2 < a.slot.width + b.width * cos + b.height * sin;
  return across && Math.abs(dy * a.cos - dx * a.sin) * 2 < a.slot.height + b.width * sin + b.height * cos;
}

function liesIn({ x, y, width, height }: Area, { slot, reachX, reachY }: Placed): boolean {
  const isAcross = slot.x - reachX >= x && slot.x + reachX <= x + width;
  return isAcross && slot.y - reachY >= y && slot.y + reachY <= y + height;
}

function cellsOf({ slot: { x, y }, reachX, reachY }: Placed, cell: number) {
  return {
    left: Math.floor((x - reachX) / cell),
    right: Math.floor((x + reachX) / cell),
    top: Math.floor((y - reachY) / cell),
    bottom: Math.floor((y + reachY) / cell),
  };
}

const cellKey = (i: number, j: number) => i * 0x200000 + j;
