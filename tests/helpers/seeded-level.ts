import type { FixtureKind, Level, Opening, Shape, Wall, XY } from '../../geometry/plan/model.ts';
import { emptyLevel } from '../../geometry/planfile/empty.ts';

/** Rooms on a grid, filled row by row. */
export interface LevelSize {
  readonly across: number;
  readonly down: number;
  readonly rooms: number;
  readonly features: number;
}

/** The three sizes of the benchmarks. */
export const SIZES = {
  house: { across: 3, down: 2, rooms: 5, features: 40 },
  large: { across: 6, down: 5, rooms: 30, features: 400 },
  huge: { across: 20, down: 15, rooms: 300, features: 5000 },
} as const satisfies Record<string, LevelSize>;
export type Size = keyof typeof SIZES;

/** Returns a seeded generator of numbers in 0…1 (mulberry32, public domain). */
export function seededRandom(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let t = state;
    t = Math.imul(t ^ (t >>> 15), t | 1);
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61);
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
}

const CELL = 4200;
const TURN = (17 * Math.PI) / 180;

/** Rotation on the page, so that nothing is axis-parallel by accident. */
function turned([x, y]: XY): XY {
  return [x * Math.cos(TURN) - y * Math.sin(TURN), x * Math.sin(TURN) + y * Math.cos(TURN)];
}

/** Kinds of furniture and fixtures, in rough proportions. */
const KINDS: readonly (FixtureKind | 'object')[] = [
  ...new Array(11).fill('object'),
  'supply-register',
  'supply-register',
  'return-grille',
  'portable-fan',
  'radiator',
  'floor-drain',
  'washer',
  'dehumidifier',
];

/**
 * Returns an invented level of rooms on a grid, rotated on the page, with doors, windows, fixtures and furniture: the same for the
 * same seed. Features are openings, fixtures and objects together; there is a sump pit and a furnace to every 30 rooms.
 */
export function seededLevel(size: Size | LevelSize, seed = 1): Level {
  const random = seededRandom(seed);
  const { across, down, rooms, features } = typeof size === 'string' ? SIZES[size] : size;
  // One corner room is missing: the outline is an L.
  const present = (i: number, j: number) => i >= 0 && j >= 0 && i < across && j < down && j * across + i < rooms;
  const xs = gridLines(across, random);
  const ys = gridLines(down, random);
  const walls: Wall[] = [];
  const inner: string[] = [];
  const outer: string[] = [];
  const addWall = (from: XY, to: XY, outside: boolean) => {
    const id = `w${walls.length}`;
    walls.push({ id, from: turned(from), to: turned(to), thickness: outside ? 220 : 110, side: 'auto' });
    (outside ? outer : inner).push(id);
  };
  for (let j = 0; j <= down; j++) {
    for (let i = 0; i <= across; i++) {
      const [x, y] = [xs[i] as number, ys[j] as number];
      const here = present(i, j);
      const above = present(i, j - 1);
      const left = present(i - 1, j);
      if ((here || above) && i < across) addWall([x, y], [xs[i + 1] as number, y], here !== above);
      if ((here || left) && j < down) addWall([x, y], [x, ys[j + 1] as number], here !== left);
    }
  }
  const openings = seededOpenings(random, walls, inner, outer, Math.round(features * 0.2));
  const level: Level = {
    ...emptyLevel('L'),
    name: typeof size === 'string' ? size : `${features} features`,
    ceiling: 2500,
    walls,
    openings,
    rooms: Array.from({ length: rooms }, (_, k) => {
      const [i, j] = [k % across, Math.floor(k / across)];
      const at = turned([
        ((xs[i] as number) + (xs[i + 1] as number)) / 2,
        ((ys[j] as number) + (ys[j + 1] as number)) / 2,
      ]);
      return { id: `r${k}`, name: `Room ${k}`, use: k % 7 === 6 ? 'laundry' : 'den', at };
    }),
  };
  return withThings(level, random, features - openings.length, { xs, ys, rooms, across });
}

function gridLines(count: number, random: () => number): number[] {
  const lines = [0];
  for (let i = 0; i < count; i++) lines.push((lines[i] as number) + CELL * (0.8 + 0.5 * random()));
  return lines;
}

function seededOpenings(
  random: () => number,
  walls: readonly Wall[],
  inner: readonly string[],
  outer: readonly string[],
  count: number,
): Opening[] {
  const ids = [...inner, ...outer.filter(() => random() < 0.8)].slice(0, count);
  return ids.map((id, k) => {
    const wall = walls.find((one) => one.id === id) as Wall;
    const length = Math.hypot(wall.to[0] - wall.from[0], wall.to[1] - wall.from[1]);
    const width = 760 + Math.round(random() * 300);
    const kind = inner.includes(id) || random() < 0.2 ? 'door' : 'window';
    const offset = 300 + random() * (length - width - 600);
    return { id: `o${k}`, wall: id, kind, offset, width, bottom: kind === 'door' ? 0 : 900, top: 2000 };
  });
}

function withThings(
  level: Level,
  random: () => number,
  count: number,
  { xs, ys, rooms, across }: { xs: number[]; ys: number[]; rooms: number; across: number },
): Level {
  const fixtures: Level['fixtures'][number][] = [];
  const objects: Level['objects'][number][] = [];
  for (let k = 0; k < count; k++) {
    const room = k % rooms;
    const [i, j] = [room % across, Math.floor(room / across)];
    const at = turned([
      (xs[i] as number) + (0.1 + 0.8 * random()) * ((xs[i + 1] as number) - (xs[i] as number)),
      (ys[j] as number) + (0.1 + 0.8 * random()) * ((ys[j + 1] as number) - (ys[j] as number)),
    ]);
    const rare = room % 30 === 0 && k < rooms * 2;
    const common = KINDS[Math.floor(random() * KINDS.length)] ?? 'object';
    const kind = rare ? rareKind(k < rooms) : common;
    const shape = seededShape(random, at);
    if (kind === 'object') {
      const bottom = random() < 0.15 ? 860 : 0;
      objects.push({ id: `t${k}`, name: 'Thing', shape, bottom, top: bottom + 300 + random() * 1200 });
    } else {
      const stream = kind === 'supply-register' ? { direction: random() * 360, spread: 40, reach: 1200 } : null;
      fixtures.push({ id: `f${k}`, kind, name: '', shape, bottom: 0, top: 600, stream });
    }
  }
  return { ...level, fixtures, objects };
}

function rareKind(first: boolean): FixtureKind {
  return first ? 'sump-pit' : 'furnace';
}

function seededShape(random: () => number, center: XY): Shape {
  const form = random();
  if (form < 0.25) return { circle: { center, radius: 60 + random() * 200 } };
  const width = 200 + random() * 700;
  const depth = 150 + random() * 400;
  if (form < 0.9) return { box: { center, width, depth, turn: random() * 180 } };
  const [x, y] = center;
  // An L-shaped counter.
  return {
    polygon: {
      points: [
        [x, y],
        [x + width, y],
        [x + width, y + depth / 2],
        [x + width / 2, y + depth / 2],
        [x + width / 2, y + depth],
        [x, y + depth],
      ],
    },
  };
}
