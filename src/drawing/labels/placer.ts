import type { Slot } from './slot.ts';

/** Finds free places for labels: everything that must not be written over is a slot. Greedy: what is placed first keeps its place. */

/** An upright rectangle. */
export interface Area {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

/**
 * Kinds of taken ground: the floor under things, their outlines, walls, thin lines, symbols of detectors, ground that is reserved for marks
 * and their tags, which are drawn later, and ink that is never written over. Edges of zones take none: halos interrupt them.
 */
export type Ground = 'thing' | 'outline' | 'wall' | 'line' | 'symbol' | 'mark' | 'ink';

export interface Placer {
  /** Whether the slot is within the area and over no taken ground, not counting the kinds `over` and the ground of `owner`. */
  readonly isFree: (slot: Slot, over?: readonly Ground[], owner?: string) => boolean;
  /** @param parts the parts of the slot that are taken, computed when another slot first overlaps it; by default all of it */
  readonly take: (slot: Slot, ground?: Ground, owner?: string, parts?: () => readonly Slot[]) => void;
  /** Whether everything taken that overlaps the slot crosses it at a steep angle, rather than running along it. */
  readonly isCrossedSteeply: (slot: Slot) => boolean;
  /** Area of ink and symbols under the slot, in square units. Turned slots count as the upright rectangles around them. */
  readonly covered: (slot: Slot) => number;
}

/** Ground that a leader may cross: not ink, and not the symbol of another detector. */
export const DRAWN: readonly Ground[] = ['thing', 'outline', 'wall', 'line'];

/**
 * A slot that is taken or tried, with cached values: the sine and cosine of its turn, and half the size of its upright bounding rectangle.
 */
interface Placed {
  readonly slot: Slot;
  readonly cos: number;
  readonly sin: number;
  readonly reachX: number;
  readonly reachY: number;
  /** Bit of its ground in a mask. */
  readonly bit: number;
  readonly owner: string | undefined;
  parts: readonly Placed[] | (() => readonly Slot[]) | undefined;
}

const BIT: Readonly<Record<Ground, number>> = { ink: 1, outline: 2, wall: 4, thing: 8, line: 16, symbol: 32, mark: 64 };
const ALL = 127;
/** Slots that overlap by less than this only touch: the overlap is a rounding error. */
const ROUNDING = 1e-9;

/**
 * @param area all slots that count as free are within it; null for no bound
 * @param cell side of the squares by which taken slots are looked up; about the height of a slot
 */
export function createPlacer(area: Area | null, cell: number): Placer {
  const squares = new Map<number, Placed[]>();
  const squareOf = (coordinate: number) => Math.floor(coordinate / cell);
  /** Whether `holds` is true for any taken slot that overlaps this one, has its ground in the mask and does not belong to the owner. */
  const someMet = (
    placed: Placed,
    mask: number,
    owner: string | undefined,
    holds: (met: Placed) => boolean,
  ): boolean => {
    const { slot, reachX, reachY } = placed;
    const [right, bottom] = [squareOf(slot.x + reachX), squareOf(slot.y + reachY)];
    for (let i = squareOf(slot.x - reachX); i <= right; i++) {
      for (let j = squareOf(slot.y - reachY); j <= bottom; j++) {
        for (const taken of squares.get(squareKey(i, j)) ?? NONE) {
          const isCounted = (taken.bit & mask) !== 0 && (owner === undefined || taken.owner !== owner);
          if (isCounted && meet(placed, taken) && someMetPart(placed, taken, holds)) return true;
        }
      }
    }
    return false;
  };
  return {
    isFree: (slot, over = [], owner) => {
      const placed = placedAt(slot);
      if (area && !liesIn(area, placed)) return false;
      let mask = ALL;
      for (const ground of over) mask &= ~BIT[ground];
      return !someMet(placed, mask, owner, () => true);
    },
    take: (slot, ground = 'ink', owner, parts) => {
      const taken = placedAt(slot, BIT[ground], owner, parts);
      const { reachX, reachY } = taken;
      const [right, bottom] = [squareOf(slot.x + reachX), squareOf(slot.y + reachY)];
      for (let i = squareOf(slot.x - reachX); i <= right; i++) {
        for (let j = squareOf(slot.y - reachY); j <= bottom; j++) {
          const key = squareKey(i, j);
          const others = squares.get(key);
          if (others) others.push(taken);
          else squares.set(key, [taken]);
        }
      }
    },
    isCrossedSteeply: (slot) =>
      !someMet(placedAt(slot), ALL, undefined, ({ slot: { turn } }) => !isSteep(turn - slot.turn)),
    covered: (slot) => {
      const placed = placedAt(slot);
      const met = new Set<Placed>();
      someMet(placed, BIT.ink | BIT.symbol, undefined, (taken) => !met.add(taken));
      return [...met].reduce((sum, taken) => sum + shared(placed, taken), 0);
    },
  };
}

const NONE: readonly Placed[] = [];
const squareKey = (i: number, j: number) => i * 0x200000 + j;

function someMetPart(placed: Placed, taken: Placed, holds: (met: Placed) => boolean): boolean {
  if (!taken.parts) return holds(taken);
  if (typeof taken.parts === 'function') taken.parts = taken.parts().map((slot) => placedAt(slot));
  return taken.parts.some((part) => meet(placed, part) && holds(part));
}

/** Whether lines whose directions differ by this angle cross at 35 degrees or more. */
function isSteep(degrees: number): boolean {
  return Math.abs(Math.sin((degrees * Math.PI) / 180)) > 0.57;
}

/** Whether two slots overlap. */
export function overlap(a: Slot, b: Slot): boolean {
  return meet(placedAt(a), placedAt(b));
}

function placedAt(slot: Slot, bit = 0, owner?: string, parts?: Placed['parts']): Placed {
  const { width, height, turn } = slot;
  const cos = turn === 0 ? 1 : Math.cos((turn * Math.PI) / 180);
  const sin = turn === 0 ? 0 : Math.sin((turn * Math.PI) / 180);
  const reachX = (width * Math.abs(cos) + height * Math.abs(sin)) / 2;
  const reachY = (width * Math.abs(sin) + height * Math.abs(cos)) / 2;
  return { slot, cos, sin, reachX, reachY, bit, owner, parts };
}

/** Separating axes: two convex shapes are apart when a line parallel to one of their sides parts them. */
function meet(a: Placed, b: Placed): boolean {
  const dx = b.slot.x - a.slot.x;
  const dy = b.slot.y - a.slot.y;
  if (isApart(dx, a.reachX + b.reachX) || isApart(dy, a.reachY + b.reachY)) return false;
  return (a.slot.turn === 0 && b.slot.turn === 0) || (meetAlong(a, b, dx, dy) && meetAlong(b, a, dx, dy));
}

/** Whether the two overlap when seen along both axes of the first. */
function meetAlong(a: Placed, b: Placed, dx: number, dy: number): boolean {
  const { width, height } = b.slot;
  const cos = Math.abs(a.cos * b.cos + a.sin * b.sin);
  const sin = Math.abs(a.cos * b.sin - a.sin * b.cos);
  const [right, down] = [dx * a.cos + dy * a.sin, dy * a.cos - dx * a.sin];
  if (isApart(right, (a.slot.width + width * cos + height * sin) / 2)) return false;
  return !isApart(down, (a.slot.height + width * sin + height * cos) / 2);
}

function isApart(distance: number, reach: number): boolean {
  return Math.abs(distance) >= reach - ROUNDING;
}

/** Area that the upright bounding rectangles of two slots share. */
function shared(a: Placed, b: Placed): number {
  const along = (x: number, reach: number, other: number, otherReach: number) =>
    Math.max(0, Math.min(x + reach, other + otherReach) - Math.max(x - reach, other - otherReach));
  return along(a.slot.x, a.reachX, b.slot.x, b.reachX) * along(a.slot.y, a.reachY, b.slot.y, b.reachY);
}

function liesIn({ x, y, width, height }: Area, { slot, reachX, reachY }: Placed): boolean {
  const isAcross = slot.x - reachX >= x && slot.x + reachX <= x + width;
  return isAcross && slot.y - reachY >= y && slot.y + reachY <= y + height;
}
