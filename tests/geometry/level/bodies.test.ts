import { describe, expect, it } from 'vitest';
import { buildLevel } from '../../../geometry/level/build-level.ts';
import { jointRing } from '../../../geometry/level/joints.ts';
import type { Wall, XY } from '../../../geometry/plan/model.ts';
import { bodyDistance, ringBody } from '../../../geometry/plane/body.ts';
import { ringContains, signedArea } from '../../../geometry/plane/ring.ts';
import { drawn, movedWalls, turned, wall } from '../../helpers/drawn.ts';
import { fixtureLevel } from '../../helpers/fixtures.ts';

const round = (value: number) => Math.round(value * 1000) / 1000 + 0;

/** Corners rounded to 0.001 mm, sorted. */
function sorted(points: readonly XY[]): XY[] {
  return points.map(([x, y]): XY => [round(x), round(y)]).sort((a, b) => a[0] - b[0] || a[1] - b[1]);
}

function bodiesOf(walls: readonly Wall[], id: string): XY[][] {
  const { pieces } = buildLevel(drawn(walls));
  return pieces.filter((piece) => piece.wall.id === id).map(({ body }) => sorted(body));
}

function joints(walls: readonly Wall[]): XY[][] {
  return buildLevel(drawn(walls)).joints.map(({ body }) => sorted(body));
}

/** Returns a corner at the origin: one wall along +x, the other toward `to`. */
function cornerTo(to: XY, thickness: number, second = thickness) {
  return [wall('a', [0, 0], [4000, 0], { thickness }), wall('b', [0, 0], to, { thickness: second })];
}

const SIN60 = Math.sqrt(3) / 2;
const BAR = [
  [0, -100],
  [0, 100],
  [4000, -100],
  [4000, 100],
];

describe('the body of a wall', () => {
  it.each<{ name: string; walls: readonly Wall[] }>([
    { name: 'that stands free', walls: [wall('a', [0, 0], [4000, 0])] },
    { name: 'at a square corner', walls: cornerTo([0, 3000], 200) },
    { name: 'at a sharp corner', walls: cornerTo([3000 * SIN60, 1500], 200) },
    { name: 'that goes on thinner', walls: [...cornerTo([0, 3000], 200), wall('c', [0, 0], [-3000, 0])] },
    { name: 'that ends at a thicker one', walls: [...cornerTo([0, 3000], 200), wall('c', [0, -3000], [0, 3000])] },
  ])('$name is its full rectangle, square at both ends (half the thickness on either side)', ({ walls }) => {
    expect(bodiesOf(walls, 'a')).toEqual([BAR]);
  });

  it('that another meets is the same rectangle in two pieces', () => {
    const walls = [wall('a', [0, 0], [4000, 0]), wall('b', [1000, 0], [1000, 3000])];
    expect(bodiesOf(walls, 'a')).toEqual([
      sorted([
        [0, -100],
        [0, 100],
        [1000, -100],
        [1000, 100],
      ]),
      sorted([
        [1000, -100],
        [1000, 100],
        [4000, -100],
        [4000, 100],
      ]),
    ]);
  });

  it('that has a thinner one on it loses nothing to it', () => {
    const [thick, thin] = [wall('a', [0, 0], [4000, 0], { thickness: 300 }), wall('b', [500, 0], [3000, 0])];
    const { pieces } = buildLevel(drawn([thick, thin]));
    expect(new Set(pieces.map((piece) => piece.wall.id))).toEqual(new Set(['a']));
    const corners = pieces.flatMap(({ body }) => body);
    expect(new Set(corners.map(([, y]) => y))).toEqual(new Set([-150, 150]));
    expect([Math.min(...corners.map(([x]) => x)), Math.max(...corners.map(([x]) => x))]).toEqual([0, 4000]);
  });
});

describe('a joint of two walls', () => {
  it.each<{ name: string; walls: readonly Wall[]; ring: readonly (readonly [number, number])[]; source: string }>([
    {
      name: 'square corner, equal thickness',
      walls: cornerTo([0, 3000], 200),
      ring: [
        [0, 0],
        [0, -100],
        [-100, -100],
        [-100, 0],
      ],
      source: 'both faces 100 off their lines',
    },
    {
      name: 'square corner, 200 with 100',
      walls: cornerTo([0, 3000], 200, 100),
      ring: [
        [0, 0],
        [0, -100],
        [-50, -100],
        [-50, 0],
      ],
      source: "the thin wall's face lies at x = −50",
    },
    {
      name: 'corner of 120°, equal thickness',
      walls: cornerTo([-1500, 3000 * SIN60], 200),
      ring: [
        [0, 0],
        [0, -100],
        [-57.735, -100],
        [-86.603, -50],
      ],
      source: 'the faces meet 100 / tan 60° = 57.735 back; the end of b is 100 × (−sin 60°, −cos 60°) off',
    },
    {
      name: 'corner of 30°, equal thickness',
      walls: cornerTo([3000 * SIN60, 1500], 200),
      ring: [
        [0, 0],
        [0, -100],
        [-373.205, -100],
        [-50, 86.603],
      ],
      source: '100 / tan 15° = 373.205',
    },
    {
      name: 'fold of 10°: cut off at ten half-thicknesses',
      walls: cornerTo([3000 * Math.cos(Math.PI / 18), 3000 * Math.sin(Math.PI / 18)], 200),
      ring: [
        [0, 0],
        [0, -100],
        [-994.987, -100],
        // 100 × (−sin 10°, cos 10°), and from there √(1000² − 100²) = 994.987 back along 10°.
        [-17.365, 98.481],
        [-997.236, -74.297],
      ],
      source: 'a tip at 100 / tan 5° = 1143 would be more than 1000 from the node',
    },
    {
      name: 'turn of 20°, 300 into 100: the thin face cuts across',
      walls: [
        wall('a', [-4000, 0], [0, 0], { thickness: 300 }),
        wall('b', [0, 0], [3000 * Math.cos(Math.PI / 9), 3000 * Math.sin(Math.PI / 9)], { thickness: 100 }),
      ],
      // 50 / cos 20° = 53.209 up the square end of a; the end of b at 50 × (sin 20°, −cos 20°).
      ring: [
        [0, 0],
        [0, -53.209],
        [17.101, -46.985],
      ],
      source: 'the faces of 150 and 50 meet behind the square end of a',
    },
  ])('$name ($source)', ({ walls, ring }) => {
    expect(joints(walls)).toEqual([sorted(ring as readonly XY[])]);
  });

  it('is none where walls run straight on, turned by any angle', () => {
    for (const degrees of [0, 9, 31, 44, 58.3]) {
      const walls = [wall('a', [0, 0], [1300, 0]), wall('b', [1300, 0], [4000, 0], { thickness: 300 })];
      expect(joints(movedWalls(walls, turned(degrees)))).toEqual([]);
    }
  });

  it('is there whatever other wall lies between the two', () => {
    const corner = cornerTo([0, 3000], 300);
    const between = [wall('c', [0, 0], [-3000, 0], { thickness: 115 }), wall('d', [0, 0], [-900, -900])];
    const ring = sorted([
      [0, 0],
      [0, -150],
      [-150, -150],
      [-150, 0],
    ]);
    expect(joints(corner)).toEqual([ring]);
    for (const walls of [
      [...corner, between[0]],
      [...corner, between[1]],
      [...corner, ...between],
    ]) {
      expect(joints(walls as Wall[])).toContainEqual(ring);
    }
  });

  it.each(['a', 'z'])('that a wall holds is none, whichever of two equal walls there comes first (%s)', (id) => {
    // The joint with the wall on the right extends down to y = 4150: past the end of the short one, within the long
    // one.
    const inside = { thickness: 300, side: 'inside' } as const;
    const walls = [
      wall('m', [0, 0], [0, 8000], inside),
      wall(id, [0, 0], [0, 4100], inside),
      wall('n', [0, 4000], [4000, 4000], inside),
    ];
    expect(joints(walls)).toEqual([]);
  });

  it('is clockwise on screen, convex and no farther from the node than ten half-thicknesses, at any angle', () => {
    for (let degrees = 1; degrees < 360; degrees++) {
      for (const [p, q] of [
        [100, 100],
        [150, 40],
        [1e-3, 100],
      ] as const) {
        const angle = (degrees * Math.PI) / 180;
        const along: XY = [Math.cos(angle), Math.sin(angle)];
        const ring = jointRing([0, 0], { at: [0, 0], along: [1, 0], half: p }, { at: [0, 0], along, half: q });
        if (degrees === 180) expect(ring).toBeNull();
        else {
          expect(signedArea(ring ?? [])).toBeGreaterThan(0);
          for (const [x, y] of ring ?? []) expect(Math.hypot(x, y)).toBeLessThan(10 * Math.max(p, q) + 1e-6);
        }
      }
    }
  });
});

describe('corners that once cut notches into walls', () => {
  it('two walls in one line on a turned page leave the floor whole', () => {
    const [room] = buildLevel(fixtureLevel('joint-in-turned-wall')).rooms;
    expect(room?.floorArea).toBeCloseTo((4000 - 200) * (3000 - 200), 3);
  });

  it('a stub of 50 mm in a wall of 200 takes nothing off the floor and nothing off the wall', () => {
    const [room] = buildLevel(fixtureLevel('stub-within-wall')).rooms;
    expect(room?.floorArea).toBeCloseTo((4000 - 200) * (3000 - 200), 3);
  });
});

describe('a thick wall that goes on as a thin one', () => {
  it.each([3, 10, 20, 45, 80])(
    'keeps half its thickness on either side up to the joint, at a turn of %d°',
    (degrees) => {
      for (const turn of [degrees, -degrees]) {
        const angle = (turn * Math.PI) / 180;
        const to: XY = [3000 * Math.cos(angle), 3000 * Math.sin(angle)];
        const walls = [
          wall('thick', [-4000, 0], [0, 0], { thickness: 300 }),
          wall('thin', [0, 0], to, { thickness: 100 }),
        ];
        const { pieces } = buildLevel(drawn(walls));
        // Both faces of the thick wall, just before the joint and just inside the face.
        for (const p of [
          [-0.1, 149.9],
          [-0.1, -149.9],
        ] as const) {
          expect(
            pieces.some(({ body }) => ringContains(body, p)),
            `turn ${turn}, at ${p}`,
          ).toBe(true);
        }
      }
    },
  );
});

describe('two walls that fold back on each other', () => {
  it('keep their joint where a third ends within a touch of both ends', () => {
    const folded = [wall('a', [0, 0], [2, 0]), wall('b', [0, 0], [2, 0.018])];
    const third = wall('third', [0, 0], [2, 0.009], { thickness: 60 });
    for (const walls of [folded, [...folded, third]]) {
      // The joint extends ten half-thicknesses behind the corner: 1000.
      const built = buildLevel(drawn(walls)).joints;
      expect(built.some(({ body }) => bodyDistance(ringBody(body), -900, 0) === 0)).toBe(true);
    }
  });

  it('have none where pieces lead their ends to each other, within a touch of one line', () => {
    // "b" is extended to (0, -0.0077), where "c" is, and "a" back to (-4.5, 0), where "b" ends: two pieces between the
    // same two points.
    const walls = [
      wall('a', [0, 0], [4000, 0], { thickness: 150 }),
      wall('b', [-4.5, 0], [-230, 0.386], { thickness: 90 }),
      wall('c', [0, 0], [0, 3000], { thickness: 150 }),
    ];
    const corners = buildLevel(drawn(walls)).joints.flatMap(({ body }) => body);
    // The corner of "a" and "c": 75√2. A joint of the two pieces would extend to 750.
    expect(Math.max(...corners.map(([x, y]) => Math.hypot(x, y)))).toBeCloseTo(75 * Math.SQRT2, 0);
  });
});

describe('two row houses whose walls part by a hair', () => {
  it('keep the wall outside to where they part, also where a third wall crosses just behind', () => {
    // The outdoor wedge between the two opens from (0, 0): 20 mm over 10 m.
    const corners: XY[][] = [
      [
        [-5000, 0],
        [0, 0],
        [10000, 0],
        [10000, 4000],
        [-5000, 4000],
        [-5000, 0],
      ],
      [
        [0, 0],
        [10000, -20],
        [10000, -4000],
        [-5000, -4000],
        [-5000, 0],
      ],
    ];
    const houses = corners.flatMap((way, house) =>
      way.slice(1).map((to, i) => wall(`h${house}-${i}`, way[i] as XY, to, { thickness: 100 })),
    );
    const third = wall('third', [4, -4000], [4, 4000], { thickness: 100 });
    const gaps = [houses, [...houses, third]].map((walls) => {
      const outside = buildLevel(drawn(walls)).pieces.filter(
        (piece) => piece.outside && piece.from[1] === 0 && piece.to[1] === 0,
      );
      return Math.min(...outside.map(({ body }) => bodyDistance(ringBody(body), -1000, 1000)));
    });
    // To the corner of the body where the walls diverge, (0, 50).
    expect(gaps.map((gap) => gap - Math.hypot(1000, 950))).toEqual([expect.closeTo(0, 6), expect.closeTo(0, 6)]);
  });
});
