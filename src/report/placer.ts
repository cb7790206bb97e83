/**
 * Finds free places for names. Everything that must not be written over is a slot: a rectangle that may be turned.
 * Greedy: what is placed first keeps its place.
 */
import type { Area } from './paper.ts';

export interface Slot {
  readonly x: number;
  readonly y: number;
  /** Full sizes along its own axes, mm; `x`, `y` is its middle. */
  readonly width: number;
  readonly height: number;
  /** Degrees clockwise on screen. */
  readonly turn: number;
}

/** What takes ground: edges of the white, outlines of things, walls, thin lines, and ink that is never written over. */
export type Ground = 'edge' | 'thing' | 'wall' | 'line' | 'ink';

export interface Placer {
  readonly area: Area;
  /** Whether the slot lies on the drawing with nothing taken under it, but for the kinds and the one slot that do not count. */
  readonly isFree: (slot: Slot, over?: readonly Ground[], except?: Slot) => boolean;
  readonly take: (slot: Slot, ground?: Ground) => void;
}

/** A leader may cross whatever is not writing. */
export const LEADER_OVER: readonly Ground[] = ['edge', 'thing', 'wall', 'line'];

/** From nothing written over anything to names across outlines: tried in this order. Ink is never written over. */
export const MANNERS: readonly (readonly Ground[])[] = [[], ['edge'], ['edge', 'thing']];

/** Width of the squares by which taken slots are looked up, mm. */
const CELL = 10;

export function createPlacer(area: Area): Placer {
  const cells = new Map<string, Map<Slot, Ground>>();
  return {
    area,
    isFree: (slot, over = [], except) => {
      if (!liesIn(area, slot)) return false;
      for (const key of cellKeys(slot)) {
        for (const [taken, ground] of cells.get(key) ?? []) {
          if (taken !== except && !over.includes(ground) && overlap(slot, taken)) return false;
        }
      }
      return true;
    },
    take: (slot, ground = 'ink') => {
      for (const key of cellKeys(slot)) {
        const cell = cells.get(key) ?? new Map();
        cell.set(slot, ground);
        cells.set(key, cell);
      }
    },
  };
}

/** A thin slot along a line, so that nothing is written across it. */
export function lineSlot(x1: number, y1: number, x2: number, y2: number, width = 0.6): Slot {
  return {
    x: (x1 + x2) / 2,
    y: (y1 + y2) / 2,
    width: Math.hypot(x2 - x1, y2 - y1),
    height: width,
    turn: (Math.atan2(y2 - y1, x2 - x1) * 180) / Math.PI,
  };
}

export function slotCorners({ x, y, width, height, turn }: Slot): readonly (readonly [number, number])[] {
  const cos = Math.cos((turn * Math.PI) / 180);
  const sin = Math.sin((turn * Math.PI) / 180);
  return [
    [-1, -1],
    [1, -1],
    [1, 1],
    [-1, 1],
  ].map(([i = 0, j = 0]) => {
    const dx = (i * width) / 2;
    const dy = (j * height) / 2;
    return [x + dx * cos - dy * sin, y + dx * sin + dy * cos] as const;
  });
}

/** Separating axes: two convex shapes are apart when a line parallel to one of their sides parts them. */
export function overlap(a: Slot, b: Slot): boolean {
  const reach = (Math.hypot(a.width, a.height) + Math.hypot(b.width, b.height)) / 2;
  if (Math.hypot(a.x - b.x, a.y - b.y) >= reach) return false;
  const corners = [slotCorners(a), slotCorners(b)] as const;
  return [a.turn, a.turn + 90, b.turn, b.turn + 90].every((turn) => {
    const ux = Math.cos((turn * Math.PI) / 180);
    const uy = Math.sin((turn * Math.PI) / 180);
    const [first, second] = corners.map((list) => list.map(([x, y]) => x * ux + y * uy)) as [number[], number[]];
    return Math.max(...first) > Math.min(...second) && Math.max(...second) > Math.min(...first);
  });
}

function liesIn({ x, y, width, height }: Area, slot: Slot): boolean {
  return slotCorners(slot).every(([cx, cy]) => cx >= x && cy >= y && cx <= x + width && cy <= y + height);
}

function* cellKeys(slot: Slot): Generator<string> {
  const corners = slotCorners(slot);
  const xs = corners.map(([x]) => Math.floor(x / CELL));
  const ys = corners.map(([, y]) => Math.floor(y / CELL));
  for (let i = Math.min(...xs); i <= Math.max(...xs); i++) {
    for (let j = Math.min(...ys); j <= Math.max(...ys); j++) yield `${i} ${j}`;
  }
}
