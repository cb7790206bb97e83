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
  /** @param parts what is really taken of the slot, worked out when something first meets it; left out, all of it */
  readonly take: (slot: Slot, ground?: Ground, owner?: string, parts?: () => readonly Slot[]) => void;
  /** Whether no line of this kind of ground runs along the slot: those that meet it cross it. */
  readonly isCrossedSteeply: (slot: Slot, ground: Ground) => boolean;
  /** How much of what is written, and of symbols, lies under the upright slot, in square units. */
  readonly covered: (slot: Slot) => number;
}

/** A leader may cross whatever is neither writing nor another symbol. */
export const LEADER_OVER: readonly Ground[] = ['edge', 'thing', 'outline', 'wall', 'line'];

/** A slot with what is asked of it again and again: the sine and cosine of its turn, and how far it reaches. */
interface Placed {
  slot: Slot;
  cos: number;
  sin: number;
  reachX: number;
  reachY: number;
}
interface Taken extends Placed {
  readonly bit: number;
  readonly owner: string | undefined;
  parts: readonly Placed[] | (() => readonly Slot[]) | undefined;
}

const BIT: Readonly<Record<Ground, number>> = { ink: 1, outline: 2, wall: 4, thing: 8, line: 16, symbol: 32, edge: 64 };
const ALL = 127;
const always = () => true;

/** @param cell width of the squares by which taken slots are looked up @param area nothing is placed beyond it; null for no bound */
export function createPlacer(area: Area | null, cell = 10): Placer {
  // Edges are many, and most labels may lie over them.
  const [edges, others] = [new Map<number, Taken[]>(), new Map<number, Taken[]>()];
  const cellsOf = (ground: Ground) => (ground === 'edge' ? edges : others);
  /** Calls `found` with everything taken that the mask counts and that meets a slot, until it returns true. */
  const someMet = (
    placed: Placed,
    cells: ReadonlyMap<number, Taken[]>,
    mask: number,
    found: (taken: Taken) => boolean,
  ): boolean => {
    if (cells.size === 0) return false;
    const { slot, reachX, reachY } = placed;
    const right = Math.floor((slot.x + reachX) / cell);
    const bottom = Math.floor((slot.y + reachY) / cell);
    for (let i = Math.floor((slot.x - reachX) / cell); i <= right; i++) {
      for (let j = Math.floor((slot.y - reachY) / cell); j <= bottom; j++) {
        const standing = cells.get(cellKey(i, j));
        if (!standing) continue;
        for (const taken of standing) {
          if ((taken.bit & mask) !== 0 && meet(placed, taken) && found(taken) && meetsParts(placed, taken)) return true;
        }
      }
    }
    return false;
  };
  // Thousands of places are tried for each that is taken: what a try needs is written here again and again.
  const tried = placedAt(NOWHERE);
  return {
    area,
    isFree: (slot, over = [], owner) => {
      place(tried, slot);
      if (area && !liesIn(area, tried)) return false;
      let mask = ALL;
      for (const ground of over) mask &= ~BIT[ground];
      const counts = owner === undefined ? always : (taken: Taken) => taken.owner !== owner;
      return !someMet(tried, others, mask, counts) && ((mask & BIT.edge) === 0 || !someMet(tried, edges, mask, counts));
    },
    take: (slot, ground = 'ink', owner, parts) => {
      const taken: Taken = { slot, cos: 1, sin: 0, reachX: 0, reachY: 0, bit: BIT[ground], owner, parts };
      place(taken, slot);
      enter(cellsOf(ground), cell, taken);
    },
    isCrossedSteeply: (slot, ground) => {
      place(tried, slot);
      return !someMet(tried, cellsOf(ground), BIT[ground], ({ slot: { turn } }) => !isSteep(turn - slot.turn));
    },
    covered: (slot) => {
      place(tried, slot);
      const met = new Set<Taken>();
      someMet(tried, others, BIT.ink | BIT.symbol, (taken) => !met.add(taken));
      return [...met].reduce((sum, taken) => sum + shared(tried, taken), 0);
    },
  };
}

/** Lists what is taken in every square that it may reach into. */
function enter(cells: Map<number, Taken[]>, cell: number, taken: Taken): void {
  const { slot, reachX, reachY } = taken;
  const right = Math.floor((slot.x + reachX) / cell);
  const bottom = Math.floor((slot.y + reachY) / cell);
  for (let i = Math.floor((slot.x - reachX) / cell); i <= right; i++) {
    for (let j = Math.floor((slot.y - reachY) / cell); j <= bottom; j++) {
      const key = cellKey(i, j);
      const standing = cells.get(key);
      if (standing) standing.push(taken);
      else cells.set(key, [taken]);
    }
  }
}

function meetsParts(placed: Placed, taken: Taken): boolean {
  if (!taken.parts) return true;
  if (typeof taken.parts === 'function') taken.parts = taken.parts().map(placedAt);
  return taken.parts.some((part) => meet(placed, part));
}

const NOWHERE: Slot = { x: 0, y: 0, width: 0, height: 0, turn: 0 };

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
  return place({ slot, cos: 1, sin: 0, reachX: 0, reachY: 0 }, slot);
}

/** Writes to `placed` what is asked of a slot, and returns it. */
function place(placed: Placed, slot: Slot): Placed {
  const { width, height, turn } = slot;
  placed.slot = slot;
  placed.cos = turn === 0 ? 1 : Math.cos((turn * Math.PI) / 180);
  placed.sin = turn === 0 ? 0 : Math.sin((turn * Math.PI) / 180);
  const [c, s] = [Math.abs(placed.cos), Math.abs(placed.sin)];
  placed.reachX = (width * c + height * s) / 2;
  placed.reachY = (width * s + height * c) / 2;
  return placed;
}

function meet(a: Readonly<Placed>, b: Readonly<Placed>): boolean {
  const dx = b.slot.x - a.slot.x;
  const dy = b.slot.y - a.slot.y;
  if (Math.abs(dx) >= a.reachX + b.reachX || Math.abs(dy) >= a.reachY + b.reachY) return false;
  if (a.slot.turn === 0 && b.slot.turn === 0) return true;
  const cos = Math.abs(a.cos * b.cos + a.sin * b.sin);
  const sin = Math.abs(a.cos * b.sin - a.sin * b.cos);
  return meetAlong(a, b.slot, dx, dy, cos, sin) && meetAlong(b, a.slot, dx, dy, cos, sin);
}

/** Whether the two overlap when seen along both axes of the first. */
function meetAlong(a: Readonly<Placed>, b: Slot, dx: number, dy: number, cos: number, sin: number): boolean {
  const across = Math.abs(dx * a.cos + dy * a.sin) * 2 < a.slot.width + b.width * cos + b.height * sin;
  return across && Math.abs(dy * a.cos - dx * a.sin) * 2 < a.slot.height + b.width * sin + b.height * cos;
}

/** What the upright rectangles about two slots have in common. */
function shared(a: Readonly<Placed>, b: Readonly<Placed>): number {
  const across =
    Math.min(a.slot.x + a.reachX, b.slot.x + b.reachX) - Math.max(a.slot.x - a.reachX, b.slot.x - b.reachX);
  const down = Math.min(a.slot.y + a.reachY, b.slot.y + b.reachY) - Math.max(a.slot.y - a.reachY, b.slot.y - b.reachY);
  return Math.max(0, across) * Math.max(0, down);
}

function liesIn({ x, y, width, height }: Area, { slot, reachX, reachY }: Readonly<Placed>): boolean {
  const isAcross = slot.x - reachX >= x && slot.x + reachX <= x + width;
  return isAcross && slot.y - reachY >= y && slot.y + reachY <= y + height;
}

const cellKey = (i: number, j: number) => i * 0x200000 + j;
