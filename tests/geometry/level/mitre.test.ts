import { describe, expect, it } from 'vitest';
import { buildLevel, type XY } from '../../../geometry/index.ts';
import { ringContains } from '../../../geometry/ring.ts';
import { drawn, movedWalls, turned, wall } from '../../helpers/drawn.ts';
import { fixtureLevel } from '../../helpers/fixtures.ts';

/** The body of the piece of a wall, as a sorted list of corners to a thousandth of a mm. */
function bodyOf(walls: Parameters<typeof drawn>[0], id: string): XY[] {
  const piece = buildLevel(drawn(walls)).pieces.find((one) => one.wall.id === id);
  return sorted(piece?.body ?? []);
}

function sorted(points: readonly XY[]): XY[] {
  const round = (value: number) => Math.round(value * 1000) / 1000 + 0;
  return points.map(([x, y]): XY => [round(x), round(y)]).sort((a, b) => a[0] - b[0] || a[1] - b[1]);
}

/** A corner at the origin: one wall along +x, the other towards `to`. */
function cornerTo(to: XY, thickness: number, second = thickness) {
  return [wall('a', [0, 0], [4000, 0], { thickness }), wall('b', [0, 0], to, { thickness: second })];
}

const SIN60 = Math.sqrt(3) / 2;

describe('the body of a wall', () => {
  it.each([
    {
      name: 'free at both ends: cut square',
      walls: [wall('a', [0, 0], [4000, 0])],
      body: [
        [0, -100],
        [0, 0],
        [0, 100],
        [4000, -100],
        [4000, 0],
        [4000, 100],
      ],
      source: 'half the thickness on either side',
    },
    {
      name: 'square corner, equal thickness',
      walls: cornerTo([0, 3000], 200),
      body: [
        [-100, -100],
        [0, 0],
        [100, 100],
        [4000, -100],
        [4000, 0],
        [4000, 100],
      ],
      source: 'both faces 100 off their lines: inner corner (100, 100), outer (−100, −100)',
    },
    {
      name: 'square corner, 200 with 100',
      walls: cornerTo([0, 3000], 200, 100),
      body: [
        [-50, -100],
        [0, 0],
        [50, 100],
        [4000, -100],
        [4000, 0],
        [4000, 100],
      ],
      source: "the other wall's faces lie at x = ±50",
    },
    {
      name: 'corner of 120°, equal thickness',
      walls: cornerTo([-1500, 3000 * SIN60], 200),
      body: [
        [-57.735, -100],
        [0, 0],
        [57.735, 100],
        [4000, -100],
        [4000, 0],
        [4000, 100],
      ],
      source: 'mitre line at 60°: 100 / tan 60° = 57.735',
    },
    {
      name: 'sharp corner of 30°, equal thickness',
      walls: cornerTo([3000 * SIN60, 1500], 200),
      body: [
        [-373.205, -100],
        [0, 0],
        [373.205, 100],
        [4000, -100],
        [4000, 0],
        [4000, 100],
      ],
      source: 'mitre line at 15°: 100 / tan 15° = 373.205',
    },
    {
      name: 'straight on, 200 into 100: a step',
      walls: [wall('a', [0, 0], [4000, 0]), wall('b', [-3000, 0], [0, 0], { thickness: 100 })],
      body: [
        [0, -100],
        [0, 0],
        [0, 100],
        [4000, -100],
        [4000, 0],
        [4000, 100],
      ],
      source: 'no face meets the other: square across the line',
    },
    {
      name: 'T-junction: the stem ends at the faces of the bar',
      walls: [wall('bar', [-3000, 0], [3000, 0]), wall('a', [0, 0], [0, 2000], { thickness: 100 })],
      body: [
        [-50, 100],
        [-50, 2000],
        [0, 0],
        [0, 2000],
        [50, 100],
        [50, 2000],
      ],
      source: 'faces of the bar at y = ±100, of the stem at x = ±50',
    },
  ])('$name ($source)', ({ walls, body }) => {
    expect(bodyOf(walls, 'a')).toEqual(sorted(body as unknown as XY[]));
  });

  it('folding back by 10° is cut off square instead of growing a spike of 11 half-thicknesses', () => {
    const angle = (10 * Math.PI) / 180;
    const far = Math.min(
      ...bodyOf(cornerTo([3000 * Math.cos(angle), 3000 * Math.sin(angle)], 200), 'a').map(([x]) => x),
    );
    // Half-way between the square ends (0, −100) and (−100 sin 10°, 100 cos 10°); a spike would reach −100 / tan 5° = −1143.
    expect(far).toBeCloseTo(-8.682, 3);
  });

  it.each([0, 9, 31, 44, 58.3])(
    'is the same where a wall of two pieces runs on in one line, turned by %d°',
    (degrees) => {
      const walls = [wall('a', [0, 0], [1300, 0]), wall('b', [1300, 0], [4000, 0])];
      const level = drawn(movedWalls(walls, turned(degrees)));
      const [first] = buildLevel(level).pieces;
      const back = turned(-degrees);
      expect(sorted((first?.body ?? []).map(back))).toEqual(
        sorted([
          [0, -100],
          [0, 0],
          [0, 100],
          [1300, -100],
          [1300, 0],
          [1300, 100],
        ]),
      );
    },
  );
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
        // Both faces of the thick wall, a hair before the joint and a hair inside the face.
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
