import { describe, expect, it } from 'vitest';
import { buildLevel } from '../../../geometry/level/build-level.ts';
import type { Wall, XY } from '../../../geometry/plan/model.ts';
import { ringContains, signedArea } from '../../../geometry/plane/ring.ts';
import { drawn, loop, movedWalls, rectangle, turned, wall } from '../../helpers/drawn.ts';
import { fixtureLevel } from '../../helpers/fixtures.ts';

const HOUSE = loop('h', rectangle(0, 0, 6000, 4000));
const HOUSE_FLOOR = 5800 * 3800;
const SIN60 = Math.sqrt(3) / 2;

/** Floor areas, largest first, mm². */
function floors(walls: readonly Wall[]): number[] {
  return buildLevel(drawn(walls))
    .rooms.map(({ floorArea }) => floorArea)
    .sort((a, b) => b - a);
}

function expectFloors(walls: readonly Wall[], areas: readonly number[], digits = 2): void {
  const got = floors(walls);
  expect(got.length).toBe(areas.length);
  areas.forEach((area, i) => {
    expect(got[i]).toBeCloseTo(area, digits);
  });
}

const partition = (x: number, rest: Partial<Wall> = {}) => wall('p', [x, 0], [x, 4000], { thickness: 100, ...rest });

describe('the rooms of a level', () => {
  it.each<{ name: string; walls: readonly Wall[]; areas: readonly number[]; source: string }>([
    { name: 'none without walls', walls: [], areas: [], source: 'nothing is drawn' },
    { name: 'none where walls leave a gap', walls: HOUSE.slice(1), areas: [], source: 'three sides of four' },
    { name: 'one of four walls', walls: HOUSE, areas: [HOUSE_FLOOR], source: '5800 × 3800' },
    {
      name: 'two beside a partition on long walls (T-junctions)',
      walls: [...HOUSE, partition(2000)],
      areas: [3850 * 3800, 1850 * 3800],
      source: 'less 100 at the house wall and 50 at the partition',
    },
    {
      name: 'two beside a partition on walls of two pieces each',
      walls: [wall('n1', [0, 0], [2000, 0]), wall('n2', [2000, 0], [6000, 0]), ...HOUSE.slice(1), partition(2000)],
      areas: [3850 * 3800, 1850 * 3800],
      source: 'as with long walls',
    },
    {
      name: 'four around two walls that cross',
      walls: [...HOUSE, partition(2000), wall('q', [0, 1500], [6000, 1500], { thickness: 100 })],
      areas: [3850 * 2350, 3850 * 1350, 1850 * 2350, 1850 * 1350],
      source: '100 off house walls, 50 off partitions',
    },
    {
      name: 'one with a stub standing in it',
      walls: [...HOUSE, wall('stub', [2000, 0], [2000, 1500], { thickness: 100 })],
      areas: [HOUSE_FLOOR - 1400 * 100],
      source: 'the stub shows 1500 − 100 of its length',
    },
    {
      name: 'one with a wall standing free in it',
      walls: [...HOUSE, wall('free', [2000, 2000], [3000, 2000], { thickness: 100 })],
      areas: [HOUSE_FLOOR - 1000 * 100],
      source: 'the wall is cut out, square ends',
    },
    {
      name: 'one with a solid chimney block cut out',
      walls: [...HOUSE, ...loop('c', rectangle(2000, 1500, 400, 400), { thickness: 400 })],
      areas: [HOUSE_FLOOR - 800 * 800],
      source: 'outer faces 200 beyond the lines; inside the walls meet',
    },
    {
      name: 'two where a free loop has a floor of its own',
      walls: [...HOUSE, ...loop('c', rectangle(2000, 1000, 2000, 1500), { thickness: 100 })],
      areas: [HOUSE_FLOOR - 2100 * 1600, 1900 * 1400],
      source: 'the loop is 2100 × 1600 outside and 1900 × 1400 inside',
    },
    {
      name: 'three where a free loop stands in a free loop',
      walls: [
        ...HOUSE,
        ...loop('c', rectangle(1000, 1000, 3000, 2000), { thickness: 100 }),
        ...loop('d', rectangle(2000, 1500, 1000, 1000), { thickness: 100 }),
      ],
      areas: [HOUSE_FLOOR - 3100 * 2100, 2900 * 1900 - 1100 * 1100, 900 * 900],
      source: 'each loop is cut out of the one around it',
    },
    {
      name: 'two of two houses on one page',
      walls: [...HOUSE, ...loop('g', rectangle(9000, 500, 3000, 3000))],
      areas: [HOUSE_FLOOR, 2800 * 2800],
      source: 'each for itself',
    },
    {
      name: 'one with walls of different thickness',
      walls: HOUSE.map((one, i) => ({ ...one, thickness: [100, 200, 300, 400][i] as number })),
      areas: [(6000 - 100 - 200) * (4000 - 50 - 150)],
      source: 'top 50, right 100, bottom 150, left 200 off their lines',
    },
    {
      name: 'one whose wall goes on thinner: a step in the face',
      walls: [wall('n1', [0, 0], [2000, 0]), wall('n2', [2000, 0], [6000, 0], { thickness: 100 }), ...HOUSE.slice(1)],
      areas: [HOUSE_FLOOR + 3900 * 50],
      source: 'from x = 2000 to 5900 the face lies 50 farther out',
    },
    {
      name: 'one whose wall has a very short piece in it',
      walls: [
        wall('n1', [0, 0], [2000, 0]),
        wall('n2', [2000, 0], [2005, 0]),
        wall('n3', [2005, 0], [6000, 0]),
        ...HOUSE.slice(1),
      ],
      areas: [HOUSE_FLOOR],
      source: 'a piece of 5 mm in line changes nothing',
    },
    {
      name: 'one whose wall steps aside by 40 mm, less than it is thick',
      walls: [
        wall('n1', [0, 0], [2000, 0]),
        wall('n2', [2000, 0], [2000, -40]),
        wall('n3', [2000, -40], [6000, -40]),
        wall('e', [6000, -40], [6000, 4000]),
        ...HOUSE.slice(2),
      ],
      areas: [HOUSE_FLOOR + 3800 * 40],
      source: 'the face steps at x = 2100: half the short wall beyond its line; 5900 − 2100 wide',
    },
    {
      name: 'one whose wall is drawn twice',
      walls: [...HOUSE, wall('again', [6000, 0], [0, 0])],
      areas: [HOUSE_FLOOR],
      source: 'the second lies in the first',
    },
    {
      name: 'one whose wall is thickened over part of its length',
      walls: [...HOUSE, wall('pad', [2000, 0], [4000, 0], { thickness: 300 })],
      areas: [HOUSE_FLOOR - 2000 * 50],
      source: 'where walls overlap the thickest counts: 50 more over 2000',
    },
    {
      name: 'one triangle of equal sides',
      walls: loop('t', [
        [0, 0],
        [6000, 0],
        [3000, 6000 * SIN60],
      ]),
      areas: [((6000 - 200 * Math.sqrt(3)) ** 2 * Math.sqrt(3)) / 4],
      source: 'each corner moves 100 / tan 30° along both sides: the side is 6000 − 2 × 173.205',
    },
    {
      name: 'two on either side of an oblique partition',
      walls: [...HOUSE, wall('p', [2000, 0], [4000, 4000], { thickness: 100 })],
      areas: [HOUSE_FLOOR / 2 - (Math.sqrt(5) / 2) * 50 * 3800, HOUSE_FLOOR / 2 - (Math.sqrt(5) / 2) * 50 * 3800],
      source: 'the partition runs through the middle; across the page it is 50 / sin(arctan 2) = 50 × √5 / 2 to a side',
    },
  ])('$name ($source)', ({ walls, areas }) => {
    expectFloors(walls, areas);
  });

  it('have outer rings that run clockwise on screen and holes that run the other way', () => {
    const solid = loop('c', rectangle(2000, 1500, 400, 400), { thickness: 400 });
    const [room] = buildLevel(drawn([...HOUSE, ...solid])).rooms;
    expect(room?.floorRings.map((ring) => Math.sign(signedArea(ring)))).toEqual([1, -1]);
    expect(room?.centerRings.map((ring) => Math.abs(signedArea(ring)))).toEqual([6000 * 4000, 400 * 400]);
  });

  it('can have a floor in two parts, where walls that pass each other fill what is between them', () => {
    const stubs = [
      wall('s', [3000, 0], [3000, 2100], { thickness: 100 }),
      wall('t', [3080, 4000], [3080, 1900], { thickness: 100 }),
    ];
    const { rooms } = buildLevel(drawn([...HOUSE, ...stubs]));
    expect(rooms.map(({ floorRings }) => floorRings.length)).toEqual([2]);
    // Each subtracts 2000 × 100; they share 20 × 200.
    expect(rooms[0]?.floorArea).toBeCloseTo(HOUSE_FLOOR - 2 * 2000 * 100 + 20 * 200, 3);
  });

  it.each([0, 36.8, 123, 250])('lose two walls nearly in line whole, drawn at %d degrees', (degrees) => {
    // The thin wall ends in the square end of the thick one: their joint is a sliver of 10 × sin(turn).
    const turn = turned(degrees);
    const place = ([x, y]: XY): XY => [3000 + turn([x, y])[0], 2000 + turn([x, y])[1]];
    for (const bend of [1e-6, 1e-5, 1e-4, 3e-4, 1e-3, 3e-3, 0.01, -1e-4, -1e-3]) {
      const far = turned(bend)([1100, 0]);
      const walls = [
        wall('a', place([-1100, 0]), [3000, 2000], { thickness: 20 }),
        wall('b', [3000, 2000], place(far), { thickness: 50 }),
      ];
      expectFloors([...HOUSE, ...walls], [HOUSE_FLOOR - 1100 * 20 - 1100 * 50], 0);
    }
  });

  it.each([0, 17, 30, 61.3])('end at two walls that lie on each other for a part, drawn at %d degrees', (degrees) => {
    const turn = turned(degrees);
    // Coordinates rounded to a hundredth of a mm: the two are in line within the node tolerance.
    const place = ([x, y]: XY): XY => {
      const [px, py] = turn([x - 3250, y]);
      return [Math.round((3000 + px) * 100) / 100, Math.round((2000 + py) * 100) / 100];
    };
    const walls = [
      wall('a', place([1500, 0]), place([4000, 0]), { thickness: 100 }),
      wall('b', place([3000, 0]), place([5000, 0]), { thickness: 150 }),
    ];
    const [got = 0] = floors([...HOUSE, ...walls]);
    expect(Math.abs(got - (HOUSE_FLOOR - 1500 * 100 - 2000 * 150))).toBeLessThan(10);
  });

  it('know their label by the point inside, also beside a wall that stands free', () => {
    const [room] = buildLevel(fixtureLevel('free-standing-wall')).rooms;
    expect(room?.label?.id).toBe('r1');
    expect(room?.floorArea).toBeCloseTo(3800 * 2800 - 1000 * 100, 3);
  });

  it.each([0, 30])('share a label on the line between them, turned by %d degrees', (degrees) => {
    const turn = turned(degrees);
    const rooms = [[2000, 1500] as XY, [1000, 500] as XY].map((at, i) => {
      return { id: `r${i}`, name: '', use: 'office' as const, at: turn(at) };
    });
    const model = buildLevel(drawn(movedWalls([...HOUSE, partition(2000)], turn), { rooms }));
    const small = model.rooms.find(({ labels }) => labels.length === 2);
    expect(small?.floorArea).toBeCloseTo(1850 * 3800, 2);
    expect(model.rooms.map(({ labels }) => labels.map(({ id }) => id)).sort()).toEqual([['r0'], ['r0', 'r1']]);
  });

  it('have their name inside, well away from the walls, where the center of area lies outside', () => {
    const [room] = buildLevel(fixtureLevel('label-point-in-l-shape')).rooms;
    const [x, y] = room?.labelPoint ?? [Number.NaN, Number.NaN];
    expect(ringContains(room?.floorRings[0] ?? [], [x, y])).toBe(true);
    // The arms of the floor are 1300 wide: a point in the middle of one is 650 from its walls.
    expect(Math.min(Math.abs(x - 750), Math.abs(y - 750))).toBeLessThan(250);
  });
});

describe('the order of the file', () => {
  const walls = [
    ...HOUSE,
    partition(2000),
    wall('q', [2000, 1500], [6000, 1500], { thickness: 120 }),
    wall('stub', [4000, 4000], [4000, 3000]),
    ...loop('c', rectangle(3000, 500, 400, 400), { thickness: 50 }),
  ].map((one) => ({ ...one, ...movedWalls([one], turned(23))[0] }));
  const result = (list: readonly Wall[]) => {
    const { rooms, pieces } = buildLevel(drawn(list));
    const bodies = pieces.map(({ wall: { id }, body, outside }) => JSON.stringify([id, outside, body])).sort();
    return {
      rooms: rooms.map(({ floorRings, floorArea, labelPoint }) => ({ floorRings, floorArea, labelPoint })),
      bodies,
    };
  };

  it('of the walls does not change a digit', () => {
    for (const shift of [1, 4, 9]) {
      expect(result([...walls.slice(shift), ...walls.slice(0, shift)])).toEqual(result(walls));
    }
    expect(result([...walls].reverse())).toEqual(result(walls));
  });

  it('and the direction of the walls do not change a digit', () => {
    const reversed = walls.map((one, i) => (i % 2 === 0 ? { ...one, from: one.to, to: one.from } : one));
    expect(result(reversed)).toEqual(result(walls));
  });
});

describe('exterior walls', () => {
  const outside = (walls: readonly Wall[]) =>
    buildLevel(drawn(walls))
      .pieces.filter((piece) => piece.outside)
      .map((piece) => piece.wall.id)
      .sort();

  it('are those with the unbounded face on one side', () => {
    expect(outside([...HOUSE, partition(2000)])).toEqual(['h1', 'h1', 'h2', 'h3', 'h3', 'h4']);
  });

  it('are not those around a block that stands free indoors, nor a stub indoors; a stub outdoors is', () => {
    const stubs = [wall('in', [1000, 0], [1000, 1000]), wall('out', [6000, 1000], [7000, 1000])];
    const ids = outside([...HOUSE, ...loop('c', rectangle(2000, 1500, 400, 400)), ...stubs]);
    expect(new Set(ids)).toEqual(new Set(['h1', 'h2', 'h3', 'h4', 'out']));
  });

  it('are, in a long wall, only the pieces that look outdoors', () => {
    // A wing on the left half only: the long wall is inside there, and outside on the right.
    const wing = [
      wall('x', [0, 4000], [0, 7000]),
      wall('y', [0, 7000], [3000, 7000]),
      wall('z', [3000, 7000], [3000, 4000]),
    ];
    const pieces = buildLevel(drawn([...HOUSE, ...wing])).pieces.filter((piece) => piece.wall.id === 'h3');
    const looks = pieces.map(({ from, to, outside: looksOut }) => [(from[0] + to[0]) / 2, looksOut]);
    expect(looks.sort()).toEqual(
      [
        [1500, false],
        [4500, true],
      ].sort(),
    );
  });

  it('follow `side` where it is set', () => {
    const walls = [...HOUSE.map((one) => (one.id === 'h1' ? { ...one, side: 'inside' as const } : one))];
    expect(outside([...walls, partition(2000, { side: 'outside' })])).toEqual(['h2', 'h3', 'h3', 'h4', 'p']);
  });
});

it('a level that is frozen through and through is built all the same', () => {
  const freeze = <T>(value: T): T => {
    if (typeof value === 'object' && value !== null) Object.values(value).forEach(freeze);
    return Object.freeze(value);
  };
  const corner: XY = [0, 0];
  expect(buildLevel(freeze(drawn([...HOUSE, partition(2000), wall('s', corner, [-1000, -1000])]))).rooms.length).toBe(
    2,
  );
});
