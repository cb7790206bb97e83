import { buildLevel } from '../../../geometry/level/build-level.ts';
import type { Level, XY } from '../../../geometry/plan/model.ts';
import { ringExtent } from '../../../geometry/plane/extent.ts';
import { extentBetween, itemsWithin } from '../../../geometry/snap/pick.ts';
import type { Sample } from './stand.ts';

/** One press, a long drag, and a release, at the pace of a person. */
export interface Gesture {
  readonly id: string;
  readonly name: string;
  readonly sample: Sample;
  /** The selection before the press, and the point of the press, mm; null for the middle of the stage. */
  readonly hold: (level: Level) => { readonly select: readonly string[]; readonly at: XY | null };
  /** Largest distance from the point of the press, px. */
  readonly reachPx: number;
  readonly button: 'left' | 'middle';
  /** Zoom factor relative to the whole level in view. */
  readonly zoom: number;
  /** Factor by which the page's processor is slowed, for a tablet; 1 for none. */
  readonly slowed: number;
}

const along = ([x, y]: XY, [tx, ty]: XY, share: number): XY => [x + (tx - x) * share, y + (ty - y) * share];

/** A wall without openings, from the middle of the list. */
function someWall({ walls, openings }: Level) {
  const plain = walls.filter(({ id }) => !openings.some(({ wall }) => wall === id));
  const wall = plain[Math.floor(plain.length / 2)];
  if (!wall) throw new Error('no wall without openings');
  return wall;
}

/** A room with all its walls, its name and the things in it, as a selection rectangle around it selects them. */
function someRoom(level: Level) {
  const { rooms } = buildLevel(level);
  const room = rooms[Math.floor(rooms.length / 2)];
  if (!room) throw new Error('no room');
  const { minX, minY, maxX, maxY } = ringExtent(room.centerRings.flat());
  const about = 150; // the walls' own thickness
  const ids = itemsWithin(level, extentBetween([minX - about, minY - about], [maxX + about, maxY + about]));
  const held = level.walls.find(({ id }) => ids.includes(id));
  if (!held) throw new Error('no wall about the room');
  return { select: ids, at: along(held.from, held.to, 0.4) };
}

const PULL = { button: 'left', zoom: 1, slowed: 1 } as const;
const PAN = { button: 'middle', slowed: 1, hold: () => ({ select: [], at: null }) } as const;

const DETECTOR: Gesture = {
  ...PULL,
  id: 'detector',
  name: 'a detector is dragged',
  sample: 'large',
  reachPx: 90,
  hold: ({ detectors: [one] }) => {
    if (!one) throw new Error('no detector');
    return { select: [one.id], at: one.at };
  },
};

export const GESTURES: readonly Gesture[] = [
  DETECTOR,
  { ...DETECTOR, id: 'detector-slowed', name: 'the same, slowed six times', slowed: 6 },
  {
    ...PULL,
    id: 'wall',
    name: 'a wall is dragged',
    sample: 'large',
    reachPx: 25,
    hold: (level) => {
      const wall = someWall(level);
      return { select: [wall.id], at: along(wall.from, wall.to, 0.4) };
    },
  },
  { ...PULL, id: 'room', name: 'a room with all in it is dragged', sample: 'large', reachPx: 25, hold: someRoom },
  { ...PAN, id: 'pan-large', name: 'the sheet is moved, twice as large', sample: 'large', reachPx: 200, zoom: 2 },
  {
    ...PAN,
    id: 'pan-whole',
    name: 'the sheet is moved, the whole level in view',
    sample: 'huge',
    reachPx: 200,
    zoom: 1,
  },
  { ...PAN, id: 'pan-near', name: 'the sheet is moved, four times as large', sample: 'huge', reachPx: 200, zoom: 4 },
];

/** Returns a curved path that returns, as when a person looks for a place, px, one point for each report of a mouse. */
export function handPath([x, y]: XY, reachPx: number, points: number): readonly XY[] {
  return Array.from({ length: points }, (_, i): XY => {
    return [x + reachPx * Math.sin(i / 20), y + reachPx * 0.7 * (1 - Math.cos(i / 13))];
  });
}
