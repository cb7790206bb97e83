import { describe, expect, it } from 'vitest';
import type { Detector, Level, Plan, Wall, XY } from '../../../geometry/plan/model.ts';
import { emptyPlan } from '../../../geometry/planfile/empty.ts';
import { polygonized } from '../../../geometry/recheck/faces.ts';
import { recheck } from '../../../geometry/recheck/recheck.ts';
import { boxWalls, levelOf, wall } from '../../helpers/level-of.ts';

/*
 * The walls of the second computation, worked out by hand from the plan file's description: a wall is its center-line with
 * half its thickness on either side, every pair of walls at a node is joined square on its outer side. Detectors have a radius of 50.
 */

function detector(at: XY, rest: Partial<Detector> = {}): Detector {
  return { id: 'd1', label: '', at, base: 762, radius: 50, tall: 25, pair: null, ...rest };
}

function planWith(parts: Partial<Level>): Plan {
  return { ...emptyPlan(), levels: [levelOf(parts)] };
}

/** Returns the least distance that a rule measures for the first detector; null if nothing is measured. */
function least(parts: Partial<Level>, rule: string): number | null {
  const opinion = recheck(planWith(parts));
  if (!opinion.ok) throw new Error(opinion.cause);
  const rows = opinion.levels[0]?.detectors[0]?.checks.filter((row) => row.rule === rule) ?? [];
  const lengths = rows.flatMap(({ measured }) => (measured === null ? [] : [measured]));
  return lengths.length > 0 ? Math.min(...lengths) : null;
}

/** A house with an L-shaped plan: the inner corner is at (6000, 4000), the room on its left and above. */
const L_SHAPE: readonly Wall[] = (
  [
    [0, 0],
    [10000, 0],
    [10000, 4000],
    [6000, 4000],
    [6000, 8000],
    [0, 8000],
  ] as const
).map((from, i, corners) => wall(`w${i + 1}`, from, corners[(i + 1) % corners.length] as XY, 300));

describe('the second computation: walls', () => {
  // The foundation's corner is at (5850, 3850): 240 to the right and 180 below, so 300 away, minus the radius.
  it.each([
    ['nothing', []],
    ['a partition in line with a leg', [wall('p', [6000, 4000], [6000, 0], 115)]],
    ['a partition at 45 degrees', [wall('p', [6000, 4000], [10000, 0], 115)]],
    ['a partition as thick as the foundation', [wall('p', [6000, 4000], [6000, 0], 300)]],
  ])('an inner corner with %s keeps its foundation', (_, more) => {
    const parts = { walls: [...L_SHAPE, ...more], detectors: [detector([5610, 3670])] };
    expect(least(parts, 'outside-wall')).toBeCloseTo(250, 6);
  });

  it('a wall drawn almost on another takes nothing from it', () => {
    const askew = wall('p', [0, 0], [6000, 8], 100);
    const parts = { walls: [...boxWalls(0, 0, 6000, 4000, 300), askew], detectors: [detector([3000, 400])] };
    // The foundation's face is at y = 150.
    expect(least(parts, 'outside-wall')).toBeCloseTo(200, 6);
  });

  it('an opening is as deep as the thickest wall that runs there', () => {
    const walls = [...boxWalls(0, 0, 6000, 4000, 300), wall('p', [1000, 0], [5000, 0], 90)];
    const openings = [
      { id: 'o1', wall: 'p', kind: 'window', offset: 1500, width: 1000, bottom: 900, top: 2000 } as const,
    ];
    expect(least({ walls, openings, detectors: [detector([3000, 400])] }, 'outside-opening')).toBeCloseTo(200, 6);
  });

  it('an opening has the depth of a thick wall that crosses its own at a flat angle', () => {
    // The window's middle is where the center-lines cross, (4000, 0); its ends are 18 from the thick wall.
    const walls = [...boxWalls(0, 0, 8000, 6000, 300), wall('p', [2000, -80], [6000, 80], 100)];
    const openings = [
      { id: 'o', wall: 'p', kind: 'window' as const, offset: 1551.6, width: 900, bottom: 900, top: 2000 },
    ];
    // 400 plus the half thickness along the normal of p, minus the radius: the axis is straight inward from the middle.
    const length = Math.hypot(4000, 160);
    const at: XY = [4000 - (160 / length) * 550, (4000 / length) * 550];
    expect(least({ walls, openings, detectors: [detector(at)] }, 'outside-opening')).toBeCloseTo(550 - 150 - 50, 6);
  });

  it('a wall of studs in front of the foundation is an exterior wall, one in front of a room is not', () => {
    const studs = (y: number) => [...boxWalls(0, 0, 6000, 4000, 200), wall('p', [0, y], [6000, y], 90)];
    // Faces at 100 and y - 45: 255 between them, then 755.
    expect(least({ walls: studs(400), detectors: [detector([3000, 1000])] }, 'outside-wall')).toBeCloseTo(505, 6);
    expect(least({ walls: studs(900), detectors: [detector([3000, 1400])] }, 'outside-wall')).toBeCloseTo(1250, 6);
    expect(least({ walls: studs(900), detectors: [detector([3000, 1400])] }, 'object')).toBeCloseTo(405, 6);
  });

  it('a cavity that has a name is a room', () => {
    const walls = [...boxWalls(0, 0, 6000, 4000, 200), wall('p', [0, 400], [6000, 400], 90)];
    const rooms = [{ id: 'r1', name: 'Shelf', use: 'closet', at: [3000, 200] } as const];
    expect(least({ walls, rooms, detectors: [detector([3000, 1000])] }, 'outside-wall')).toBeCloseTo(850, 6);
  });

  it('a corner that folds back reaches no farther than ten half-thicknesses', () => {
    // Two walls of 100 that leave (0, 0) at 2 degrees: their faces would meet 2,865 away. The joint is cut where both faces are 500 away,
    // on a line across the bisector.
    const degree = Math.PI / 180;
    const at = (turn: number, far: number): XY => [far * Math.cos(turn), far * Math.sin(turn)];
    const walls = [wall('a', [0, 0], at(0, 5000)), wall('b', [0, 0], at(2 * degree, 5000))];
    const reach = 500 * Math.cos(Math.asin(50 / 500) - degree);
    expect(least({ walls, detectors: [detector(at(degree, -1000))] }, 'outside-wall')).toBeCloseTo(950 - reach, 6);
  });

  it('a loose end half an inch short is led on to the wall', () => {
    const walls = [...boxWalls(0, 0, 6000, 4000, 200), wall('p', [3000, 0], [3000, 3988], 100)];
    const rooms = [
      { id: 'r1', name: '', use: 'den', at: [1000, 2000] },
      { id: 'r2', name: '', use: 'closet', at: [5000, 2000] },
    ] as const;
    const opinion = recheck(planWith({ walls, rooms, detectors: [detector([1500, 2000])] }));
    const rows = opinion.ok ? opinion.levels[0]?.detectors[0]?.checks : [];
    expect(rows?.find(({ rule }) => rule === 'room-use')?.verdict).toBe('clear');
  });
});

describe('the second computation: ends of walls', () => {
  it('two walls in one line stay where they were drawn', () => {
    // Collinear except for rounding: the thick wall ends at (8830, 5731), whatever the quotient of two rounding errors gives. From 300 along
    // the thin wall and 600 beside it, the nearest point is the corner of its square end.
    const node: XY = [8830, 5731];
    const walls = [wall('a', [7245, 5223], node, 300), wall('b', [10890.5, 6391.4], node, 100)];
    const length = Math.hypot(1585, 508);
    const [ux, uy] = [1585 / length, 508 / length];
    const at: XY = [node[0] + 300 * ux - 600 * uy, node[1] + 300 * uy + 600 * ux];
    expect(least({ walls, detectors: [detector(at)] }, 'outside-wall')).toBeCloseTo(Math.hypot(300, 450) - 50, 6);
  });

  it('an opening that ends where the wall runs out of the house is inside', () => {
    // The partition extends 6 mm past the center-line of the outside wall; the window ends on that line, except for rounding.
    const walls = [...boxWalls(0, 0, 6000, 4000, 200), wall('p', [3000, 0], [3000, 4006], 100)];
    const openings = [
      { id: 'o1', wall: 'p', kind: 'window', offset: 3000.1, width: 999.9 + 1e-9, bottom: 900, top: 2000 } as const,
    ];
    expect(least({ walls, openings, detectors: [detector([2000, 2000])] }, 'outside-opening')).toBeNull();
  });

  it('walls that cross at all but one place belong to their own pieces alone', () => {
    // Two outside walls cross the partition at 30 degrees, 0.016 apart: each node is 0.008 from the other wall's line.
    const walls = [
      ...boxWalls(0, 0, 6000, 4000, 200),
      wall('p', [1000, 2000], [5000, 2000], 100),
      ...[0, 0.016].map((x): Wall => {
        const [dx, dy] = [1000 * Math.cos(Math.PI / 6), 500];
        return { ...wall(`q${x}`, [3000 + x - dx, 2000 - dy], [3000 + x + dx, 2000 + dy], 60), side: 'outside' };
      }),
    ];
    const openings = [{ id: 'o1', wall: 'p', kind: 'door', offset: 500, width: 3000, bottom: 0, top: 2000 } as const];
    expect(least({ walls, openings, detectors: [detector([3000, 3000])] }, 'outside-opening')).toBeNull();
  });

  it('an end that touches ends there, however flat the angle', () => {
    // Drawn 0.004 past the center-line at 10 degrees, which is 0.02 along the wall: no piece of it is outside.
    const turn = Math.PI / 18;
    const end: XY = [3000, -0.004];
    const from: XY = [end[0] + 2000 * Math.cos(turn), end[1] + 2000 * Math.sin(turn)];
    const walls = [...boxWalls(0, 0, 6000, 4000, 100), wall('p', from, end, 300)];
    expect(least({ walls, detectors: [detector([2974, 400])] }, 'outside-wall')).toBeCloseTo(300, 1);
  });

  it('a joint within a wall is held by it, though the end that touches is a little off', () => {
    // The joints of p with the foundation are inside the foundation: the nearest part of p is its square end.
    const walls = [...boxWalls(0, 0, 6000, 4000, 300), wall('p', [3000, 2000], [3000, -0.004], 100)];
    expect(least({ walls, detectors: [detector([3000, -500])] }, 'object')).toBeCloseTo(450, 1);
  });

  it('walls that cross end square, with nothing at their far ends', () => {
    // The upper end of p is at y = -1500, the left end of q at x = -2000: both are free, 250 away minus the radius.
    const walls = [wall('p', [0, -1500], [0, 3000], 300), wall('q', [-2000, 0], [4000, 0], 100)];
    for (const [at, expected] of [
      [[0, -1750], 200],
      [[0, 3250], 200],
      [[-2250, 0], 200],
      [[4250, 0], 200],
    ] as [XY, number][])
      expect(least({ walls, detectors: [detector(at)] }, 'outside-wall')).toBeCloseTo(expected, 6);
  });

  it('two walls on each other, but for 0.005, end square together', () => {
    const walls = [wall('p', [0, 0], [3000, 0], 100), wall('q', [0, 0.005], [3000, 0], 200)];
    expect(least({ walls, detectors: [detector([-1000, 0])] }, 'outside-wall')).toBeCloseTo(950, 4);
  });

  it('a piece that leads straight across makes no joint', () => {
    // Two walls side by side, 8 apart, at a sine of 5e-4: their lines never cross. The gap at the end of p is filled by a stub of 200
    // by 8 with its corner at (-100, 0).
    const walls = [wall('p', [0, 0], [3000, 0], 200), wall('q', [0, 8], [3000, 9.5], 100)];
    expect(least({ walls, detectors: [detector([-500, -80])] }, 'outside-wall')).toBeCloseTo(
      Math.hypot(400, 80) - 50,
      6,
    );
  });

  it('a crossing beyond a tip counts where the end lies by that tip alone', () => {
    // The end of p is 15.8 from the tip of q, and 5 from q: it is extended straight across, to (15, 0), by a stub 100 wide. Its line
    // crosses that of q at (-8, 0), where there is no wall.
    const walls = [wall('p', [15, 5], [2315, 505], 100), wall('q', [0, 0], [3000, 0], 100)];
    expect(least({ walls, detectors: [detector([-500, 2])] }, 'outside-wall')).toBeCloseTo(415, 6);
  });

  it('an end by the tip of another wall is led to where the lines cross, the other by its own end', () => {
    // Ends at (8, 0) and (0, 8), lines that cross at (0, 0). The corner is square at (-50, -50).
    const walls = [wall('p', [8, 0], [3000, 0], 100), wall('q', [0, 8], [0, 3000], 100)];
    expect(least({ walls, detectors: [detector([-350, -450])] }, 'outside-wall')).toBeCloseTo(450, 6);
  });
});

describe('the second computation: where it fails', () => {
  it('takes 1,200 walls on a level, and no more', () => {
    // Walls too short to have a direction, so that nothing is computed.
    const dots = (count: number) => Array.from({ length: count }, (_, i) => wall(`w${i}`, [i, 0], [i, 0.05]));
    expect(recheck(planWith({ walls: dots(1200), detectors: [detector([0, 500])] })).ok).toBe(true);
    expect(recheck(planWith({ walls: dots(1201), detectors: [detector([0, 500])] }))).toEqual({
      ok: false,
      cause: 'more than 1200 walls on one level',
    });
  });

  it('does not take the crossing sides of a bow-tie for a face, or for bridges', () => {
    // A ring that crosses itself, in either orientation: its halves have equal areas of opposite signs.
    const [a, b, c, d]: XY[] = [
      [0, 0],
      [1000, 1000],
      [1000, 0],
      [0, 1000],
    ] as [XY, XY, XY, XY];
    const pieces = (ends: readonly (readonly [XY, XY])[]) => ends.map(([from, to]) => ({ a: from, b: to, lines: [] }));
    for (const ends of [
      [
        [a, b],
        [b, c],
        [c, d],
        [d, a],
      ],
      [
        [a, b],
        [c, b],
        [c, d],
        [a, d],
      ],
    ] as [XY, XY][][])
      expect(() => polygonized(pieces(ends))).toThrow('turf does not find the faces');
  });

  it('says why and gives no verdict', () => {
    const walls = Array.from({ length: 60 }, (_, i) => wall(`w${i}`, [0, 0], [3000 * Math.cos(i), 3000 * Math.sin(i)]));
    expect(recheck(planWith({ walls, detectors: [detector([9000, 0])] }))).toEqual({
      ok: false,
      cause: 'more than 48 walls meet at one place',
    });
  });
});
