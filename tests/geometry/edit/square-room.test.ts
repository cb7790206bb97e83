import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { adjustedQuad, QUAD_LINES, type Quad, quadLengths } from '../../../geometry/edit/quad-adjust.ts';
import { fourCorners, squaredRoom } from '../../../geometry/edit/square-room.ts';
import { buildLevel } from '../../../geometry/level/build-level.ts';
import type { Level, Opening, XY } from '../../../geometry/plan/model.ts';
import { distance } from '../../../geometry/plane/point.ts';
import { emptyPlan } from '../../../geometry/planfile/empty.ts';
import { parsePlan } from '../../../geometry/planfile/parse.ts';
import { writePlan } from '../../../geometry/planfile/write.ts';
import { evenly } from '../../helpers/evenly.ts';
import { boxWalls, levelOf, wall } from '../../helpers/level-of.ts';

const square: Quad = [
  [0, 0],
  [4000, 0],
  [4000, 3000],
  [0, 3000],
];

describe('adjustedQuad', () => {
  it('finds a parallelogram from its lengths: 100 mm out of square over 3 m', () => {
    // Sides of 4000 and sqrt(3000² + 100²), diagonals by Pythagoras.
    const side = Math.hypot(100, 3000);
    const taped = {
      'A-B': 4000,
      'B-C': side,
      'C-D': 4000,
      'D-A': side,
      'A-C': Math.hypot(4100, 3000),
      'B-D': Math.hypot(3900, 3000),
    };
    const found = adjustedQuad(square, taped);
    const expected: Quad = [
      [0, 0],
      [4000, 0],
      [4100, 3000],
      [100, 3000],
    ];
    found?.forEach((corner, i) => {
      expect(distance(corner, expected[i] as XY)).toBeLessThan(1e-6);
    });
    expect(found).not.toBeNull();
  });

  it('lengths that agree come back exactly; the sum of squares is never beaten by a nearby shape', () => {
    const off = fc.integer({ min: -150, max: 150 });
    const quads = fc.tuple(off, off, off, off, off).map(
      ([b, cx, cy, dx, dy]): Quad => [
        [0, 0],
        [4000 + b, 0],
        [4000 + cx, 3000 + cy],
        [dx, 3000 + dy],
      ],
    );
    const noise = fc.array(fc.integer({ min: -20, max: 20 }), { minLength: 6, maxLength: 6 });
    fc.assert(
      fc.property(quads, noise, fc.array(evenly(-3, 3), { minLength: 5, maxLength: 5 }), (quad, errors, nudge) => {
        const exact = adjustedQuad(square, quadLengths(quad));
        exact?.forEach((corner, i) => {
          expect(distance(corner, quad[i] as XY)).toBeLessThan(1e-5);
        });
        expect(exact).not.toBeNull();
        const taped = quadLengths(quad);
        const slipped = Object.fromEntries(
          QUAD_LINES.map((line, i) => [line, taped[line] + (errors[i] ?? 0)]),
        ) as typeof taped;
        const best = adjustedQuad(square, slipped) as Quad;
        const cost = (q: Quad) =>
          QUAD_LINES.reduce((sum, line) => sum + (quadLengths(q)[line] - slipped[line]) ** 2, 0);
        const [b = 0, cx = 0, cy = 0, dx = 0, dy = 0] = nudge;
        const near: Quad = [
          best[0],
          [best[1][0] + b, best[1][1]],
          [best[2][0] + cx, best[2][1] + cy],
          [best[3][0] + dx, best[3][1] + dy],
        ];
        expect(cost(best)).toBeLessThanOrEqual(cost(near) + 1e-6);
      }),
    );
  });
});

describe('squaredRoom', () => {
  const door: Opening = { id: 'o1', wall: 'w3', kind: 'door', offset: 700, width: 900, bottom: 0, top: 2000 };
  // 4000 by 3000 inside.
  const level = levelOf({
    walls: boxWalls(-50, -50, 4050, 3050),
    openings: [door],
    rooms: [{ id: 'r1', name: 'Den', use: 'den', at: [1000, 1000] }],
  });
  const model = buildLevel(level);
  const [room] = model.rooms;
  const taped = quadLengths(square);
  const squared = (lengths: typeof taped, from: Level = level) => {
    const built = buildLevel(from);
    const [first] = built.rooms;
    if (!first) throw new Error('no room');
    return squaredRoom(built, first, lengths, 'metric');
  };

  it('letters the corners clockwise on screen from the top left', () => {
    const found = room && fourCorners(room);
    expect(found?.ok && found.quad.map(([x, y]) => [Math.round(x), Math.round(y)])).toEqual(square);
  });

  it('two diagonals 100 mm out make the floor a parallelogram with these lengths; the door keeps its distance', () => {
    const side = Math.hypot(100, 3000);
    const lengths = {
      ...taped,
      'B-C': side,
      'D-A': side,
      'A-C': Math.hypot(4100, 3000),
      'B-D': Math.hypot(3900, 3000),
    };
    const result = squared(lengths);
    if (!result.ok) throw new Error(result.reason);
    expect(result.says).toBe('The room is squared up: corner C 10 cm, D 10 cm; A stays. The lengths agree.');
    const after = buildLevel(result.level).rooms[0];
    const found = after && fourCorners(after);
    if (!found?.ok) throw new Error('the room is no room of four corners');
    for (const line of QUAD_LINES) expect(quadLengths(found.quad)[line]).toBeCloseTo(lengths[line], 1);
    expect(result.level.openings).toEqual([door]);
    expect(after?.label?.id).toBe('r1');
  });

  it.each([
    {
      name: 'a diagonal longer than two sides',
      lengths: { ...taped, 'A-C': 7100 },
      says: 'A-C cannot be 7.10 m: A-B and B-C together are 7.00 m. Check the tape again.',
    },
    {
      name: 'a diagonal shorter than two sides differ',
      lengths: { ...taped, 'B-D': 900 },
      says: 'B-D cannot be 90 cm: B-C and C-D differ by 1.00 m. Check the tape again.',
    },
    {
      name: 'a slip of a foot',
      lengths: { ...taped, 'A-C': 5305 },
      says: /^These lengths do not belong to one room: the nearest shape still misses \S+ by .* Tape the diagonals again/,
    },
  ])('refuses $name', ({ lengths, says }) => {
    const result = squared(lengths);
    expect(result.ok).toBe(false);
    if (!result.ok) expect(result.reason).toMatch(says);
  });

  it('refuses a wall that runs on past a corner that must move, and a room of six corners', () => {
    const side = Math.hypot(100, 3000);
    const lengths = {
      ...taped,
      'B-C': side,
      'D-A': side,
      'A-C': Math.hypot(4100, 3000),
      'B-D': Math.hypot(3900, 3000),
    };
    const through = {
      ...level,
      walls: level.walls.map((each) => (each.id === 'w2' ? { ...each, to: [4050, 6000] as XY } : each)),
    };
    const result = squared(lengths, through);
    expect(result.ok ? '' : result.reason).toBe(
      'A wall runs straight on past corner C. Split it there first, then square the room up.',
    );
    const l = levelOf({
      walls: [
        wall('a', [0, 0], [4000, 0]),
        wall('b', [4000, 0], [4000, 2000]),
        wall('c', [4000, 2000], [2000, 2000]),
        wall('d', [2000, 2000], [2000, 4000]),
        wall('e', [2000, 4000], [0, 4000]),
        wall('f', [0, 4000], [0, 0]),
      ],
    });
    const six = squared(taped, l);
    expect(six.ok ? '' : six.reason).toBe('This room has 6 corners. Two diagonals square up a room of four.');
  });

  it('what comes out is read back, with every opening in its wall', () => {
    const off = fc.integer({ min: -120, max: 120 });
    fc.assert(
      fc.property(off, off, off, off, off, (b, cx, cy, dx, dy) => {
        const quad: Quad = [
          [0, 0],
          [4000 + b, 0],
          [4000 + cx, 3000 + cy],
          [dx, 3000 + dy],
        ];
        const result = squared(quadLengths(quad));
        if (!result.ok) throw new Error(result.reason);
        expect(parsePlan(writePlan({ ...emptyPlan(), levels: [result.level] })).ok).toBe(true);
        const after = buildLevel(result.level).rooms[0];
        const found = after && fourCorners(after);
        for (const line of QUAD_LINES) {
          expect(found?.ok && quadLengths(found.quad)[line]).toBeCloseTo(quadLengths(quad)[line], 1);
        }
      }),
    );
  });
});
