import type { Mm, XY } from '../../../geometry/plan/model.ts';
import type { Dice } from './dice.ts';
import { type Cell, type Draft, nextWallId } from './draft.ts';

/** How the walls along one line of the drawing are divided: long ones with T-junctions, one per room edge, or some of each. */
type Cutting = 'long' | 'pieces' | 'mixed';

interface Edge {
  readonly from: XY;
  readonly to: XY;
  readonly thickness: Mm;
}

/** Adds a house of 1 to 12 rooms with its corner at `corner`. Returns its width, mm. */
export function addHouse(dice: Dice, draft: Draft, corner: XY): Mm {
  const house = dice.pick([gridHouse, gridHouse, gridHouse, legHouse, brickHouse, brickHouse])(dice, corner);
  for (const edge of house.edges) {
    const [from, to] = dice.chance(0.5) ? [edge.from, edge.to] : [edge.to, edge.from];
    draft.walls.push({ id: nextWallId(draft), from, to, thickness: edge.thickness, side: 'auto' });
  }
  draft.cells.push(...house.cells);
  return house.width;
}

interface House {
  readonly edges: readonly Edge[];
  readonly cells: readonly Cell[];
  readonly width: Mm;
}

/** Lengths as people draw them: whole inches, whole centimeters, or unrounded from the mouse. */
function steps(dice: Dice, count: number, least: Mm, most: Mm): Mm[] {
  const grid = dice.pick([25.4, 10, 0]);
  const stops = [0];
  for (let i = 0; i < count; i++) {
    const length = dice.between(least, most);
    stops.push((stops[i] as Mm) + (grid > 0 ? Math.round(length / grid) * grid : length));
  }
  return stops;
}

function thicknesses(dice: Dice): { outer: Mm; inner: Mm; each: boolean } {
  return {
    outer: dice.pick([150, 203.2, 254, 317.5]),
    inner: dice.pick([70, 101.6, 114.3, 160]),
    each: dice.chance(0.2),
  };
}

/** Rooms on a grid; neighbors of one group form one room, and omitted cells form steps of the outline. */
function gridHouse(dice: Dice, [left, top]: XY): House {
  const nx = dice.int(1, 4);
  const ny = dice.int(1, 3);
  const xs = steps(dice, nx, 1800, 5600);
  const ys = steps(dice, ny, 1800, 5200);
  const group = cellGroups(dice, nx, ny);
  const oblique = dice.chance(0.2);
  const corners = ys.map((y) =>
    xs.map((x): XY => {
      const [dx, dy] = oblique ? [dice.between(-300, 300), dice.between(-300, 300)] : [0, 0];
      return [left + x + dx, top + y + dy];
    }),
  );
  const corner = (i: number, j: number) => (corners[j] as XY[])[i] as XY;
  const at = (i: number, j: number) => (i < 0 || j < 0 || i >= nx || j >= ny ? -1 : (group[j * nx + i] as number));
  const thick = thicknesses(dice);
  const between = (a: number, b: number): Mm | null => {
    if (a === b) return null;
    if (thick.each) return dice.pick([70, 101.6, 152.4, 203.2, 300]);
    return a === -1 || b === -1 ? thick.outer : thick.inner;
  };
  const cutting: Cutting = oblique ? 'pieces' : dice.pick(['long', 'long', 'pieces', 'mixed'] as const);
  const edges: Edge[] = [];
  for (let j = 0; j <= ny; j++) {
    const line = range(nx).map((i) => edgeOf(corner(i, j), corner(i + 1, j), between(at(i, j - 1), at(i, j))));
    edges.push(...cut(dice, line, cutting));
  }
  for (let i = 0; i <= nx; i++) {
    const line = range(ny).map((j) => edgeOf(corner(i, j), corner(i, j + 1), between(at(i - 1, j), at(i, j))));
    edges.push(...cut(dice, line, cutting));
  }
  const cells = range(nx * ny)
    .filter((k) => group[k] !== -1)
    .map((k) => cellOf(xs, ys, k % nx, Math.floor(k / nx), left, top));
  return { edges, cells, width: xs[nx] as Mm };
}

/** Outlines of L, T and U by cell: a string for each row of cells, a dot for no cell. */
const LEGS: readonly (readonly string[])[] = [
  ['#.', '##'],
  ['##', '.#'],
  ['###', '.#.'],
  ['.##', '##.'],
  ['#.#', '###'],
  ['##', '#.', '##'],
];

/** A foundation in the form of an L, T or U, with partitions that start at its inner corners: in line with a leg, or at an angle. */
function legHouse(dice: Dice, [left, top]: XY): House {
  const plan = dice.pick(LEGS);
  const [nx, ny] = [plan[0]?.length ?? 0, plan.length];
  const xs = steps(dice, nx, 1900, 4800);
  const ys = steps(dice, ny, 1900, 4800);
  const has = (i: number, j: number) => plan[j]?.[i] === '#';
  const corner = (i: number, j: number): XY => [left + (xs[i] as Mm), top + (ys[j] as Mm)];
  const thickness = dice.pick([203.2, 254, 300, 400]);
  const edges: Edge[] = [];
  const cutting = dice.pick(['long', 'pieces', 'mixed'] as const);
  const outer = (is: boolean) => (is ? thickness : null);
  for (let j = 0; j <= ny; j++) {
    const line = range(nx).map((i) => edgeOf(corner(i, j), corner(i + 1, j), outer(has(i, j - 1) !== has(i, j))));
    edges.push(...cut(dice, line, cutting));
  }
  for (let i = 0; i <= nx; i++) {
    const line = range(ny).map((j) => edgeOf(corner(i, j), corner(i, j + 1), outer(has(i - 1, j) !== has(i, j))));
    edges.push(...cut(dice, line, cutting));
  }
  for (let j = 1; j < ny; j++) {
    for (let i = 1; i < nx; i++) edges.push(...partitionsAt(dice, has, corner, i, j, thickness));
  }
  const cells = range(nx * ny)
    .filter((k) => has(k % nx, Math.floor(k / nx)))
    .map((k) => cellOf(xs, ys, k % nx, Math.floor(k / nx), left, top));
  return { edges, cells, width: xs[nx] as Mm };
}

/** Up to three partitions from a corner of the grid into the house. */
function partitionsAt(
  dice: Dice,
  has: (i: number, j: number) => boolean,
  corner: (i: number, j: number) => XY,
  i: number,
  j: number,
  outer: Mm,
): Edge[] {
  const from = corner(i, j);
  const partition = (to: XY): Edge => ({ from, to, thickness: dice.pick([60, 115, 115, 150, outer]) });
  const edges: Edge[] = [];
  // In line with a leg, to the opposite wall, if there are cells on both sides of the partition.
  const ways = [
    [1, 0],
    [-1, 0],
    [0, 1],
    [0, -1],
  ] as const;
  for (const [di, dj] of ways) {
    const beside = [0, 1].map((side) =>
      has(i + (dj === 0 ? (di - 1) / 2 : side - 1), j + (di === 0 ? (dj - 1) / 2 : side - 1)),
    );
    if (beside.every(Boolean) && dice.chance(0.5)) edges.push(partition(corner(i + di, j + dj)));
  }
  if (dice.chance(0.6)) {
    const angle = dice.pick([Math.PI / 4, dice.between(0, Math.PI / 2)]) + dice.int(0, 3) * (Math.PI / 2);
    const length = dice.between(200, 1700);
    edges.push(partition([from[0] + length * Math.cos(angle), from[1] + length * Math.sin(angle)]));
  }
  return edges;
}

/** The number of the room of each cell, −1 for none. Joined neighbors form L-shaped and larger rooms. */
function cellGroups(dice: Dice, nx: number, ny: number): number[] {
  const group = range(nx * ny);
  const joins = dice.pick([0, 0.15, 0.35]);
  for (let k = 0; k < group.length; k++) {
    for (const next of [(k + 1) % nx === 0 ? -1 : k + 1, k + nx]) {
      if (next < 0 || next >= group.length || !dice.chance(joins)) continue;
      const [a, b] = [group[k] as number, group[next] as number];
      group.forEach((g, i) => {
        if (g === b) group[i] = a;
      });
    }
  }
  if (nx * ny > 2 && dice.chance(0.3)) group[dice.pick([0, nx - 1, nx * ny - 1])] = -1;
  return group;
}

/** Rows of rooms, each divided at different places, so that walls meet in T-junctions. */
function brickHouse(dice: Dice, [left, top]: XY): House {
  const rows = dice.int(1, 3);
  const ys = steps(dice, rows, 1900, 4800);
  const width = Math.round(dice.between(4000, 13000));
  const thick = thicknesses(dice);
  const cutting = dice.pick(['long', 'pieces', 'mixed'] as const);
  const divisions = range(rows).map(() => {
    const count = dice.int(1, 4);
    const inner = range(count - 1).map((i) => Math.round((width * (i + dice.between(0.75, 1.25))) / count));
    return [0, ...inner, width];
  });
  const edges: Edge[] = [];
  for (let j = 0; j <= rows; j++) {
    const y = top + (ys[j] as Mm);
    const stops = [...new Set([...(divisions[j - 1] ?? []), ...(divisions[j] ?? [])])].sort((a, b) => a - b);
    const thickness = j === 0 || j === rows ? thick.outer : thick.inner;
    const line = range(stops.length - 1).map((i) =>
      edgeOf([left + (stops[i] as Mm), y], [left + (stops[i + 1] as Mm), y], thickness),
    );
    edges.push(...cut(dice, line, cutting));
  }
  const cells: Cell[] = [];
  divisions.forEach((xs, j) => {
    xs.forEach((x, i) => {
      const thickness = i === 0 || i === xs.length - 1 ? thick.outer : thick.inner;
      edges.push({ from: [left + x, top + (ys[j] as Mm)], to: [left + x, top + (ys[j + 1] as Mm)], thickness });
      if (i > 0) cells.push(cellOf(xs, ys, i - 1, j, left, top));
    });
  });
  return { edges, cells, width };
}

function edgeOf(from: XY, to: XY, thickness: Mm | null): Edge | null {
  return thickness === null ? null : { from, to, thickness };
}

/** The edges of one line of the drawing as walls: edges of equal thickness are joined as `cutting` says. */
function cut(dice: Dice, line: readonly (Edge | null)[], cutting: Cutting): Edge[] {
  const walls: Edge[] = [];
  let goesOn = false;
  for (const edge of line) {
    const last = walls[walls.length - 1];
    const joins = cutting === 'long' || (cutting === 'mixed' && dice.chance(0.5));
    if (edge && last && goesOn && joins && edge.thickness === last.thickness) {
      walls[walls.length - 1] = { ...last, to: edge.to };
    } else if (edge) walls.push(edge);
    goesOn = edge !== null;
  }
  return walls;
}

function cellOf(xs: readonly Mm[], ys: readonly Mm[], i: number, j: number, left: Mm, top: Mm): Cell {
  const [x0, x1, y0, y1] = [xs[i] as Mm, xs[i + 1] as Mm, ys[j] as Mm, ys[j + 1] as Mm];
  return {
    middle: [left + (x0 + x1) / 2, top + (y0 + y1) / 2],
    reach: [(x1 - x0) / 2, (y1 - y0) / 2],
  };
}

function range(count: number): number[] {
  return Array.from({ length: Math.max(0, count) }, (_, i) => i);
}
