import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { TAPED_BY, type TapedBy } from '../../../geometry/dimension/taped-by.ts';
import { wallLengths } from '../../../geometry/dimension/wall-lengths.ts';
import { beyondTape, builtRun, withWallsStretched } from '../../../geometry/edit/run-on-walls.ts';
import { typedWallEnd } from '../../../geometry/edit/wall-run.ts';
import { buildLevel } from '../../../geometry/level/build-level.ts';
import type { Level, Mm, XY } from '../../../geometry/plan/model.ts';
import { distance } from '../../../geometry/plane/point.ts';
import { levelOf, wall } from '../../helpers/level-of.ts';

const ELL: readonly XY[] = [
  [0, 0],
  [6000, 0],
  [6000, 2500],
  [4000, 2500],
  [4000, 5000],
  [0, 5000],
];
/** An outline without right angles, with one corner that turns back. */
const ASLANT: readonly XY[] = [
  [0, 0],
  [5000, 800],
  [7000, 4000],
  [9500, 4600],
  [8000, 9000],
  [2000, 8500],
];

const posed = fc.record({
  degrees: fc.integer({ min: 0, max: 359 }),
  mirrored: fc.boolean(),
  backwards: fc.boolean(),
  thickness: fc.integer({ min: 80, max: 400 }),
  by: fc.constantFrom<TapedBy>(...TAPED_BY),
  /** The number of walls drawn before the run is interrupted for the first time. */
  split: fc.integer({ min: 1, max: 4 }),
});
type Pose = typeof posed extends fc.Arbitrary<infer T> ? T : never;

const moved = (points: readonly XY[], { degrees, mirrored, backwards }: Pose): readonly XY[] => {
  const [cos, sin] = [Math.cos((degrees * Math.PI) / 180), Math.sin((degrees * Math.PI) / 180)];
  const turned = points.map(([x, y]): XY => {
    const across = mirrored ? -x : x;
    return [across * cos - y * sin + 5000, across * sin + y * cos + 5000];
  });
  return backwards ? turned.reverse() : turned;
};

/** Returns a level with walls typed from a point, each with the direction and length from one point of `tape` to the next. */
function withTyped(level: Level, from: XY, tape: readonly XY[], { thickness, by }: Pose): Level {
  const corners: XY[] = [from];
  for (const [i, to] of tape.slice(1).entries()) {
    const [before, last] = [tape[i] as XY, corners.at(-1) as XY];
    const toward: XY = [last[0] + to[0] - before[0], last[1] + to[1] - before[1]];
    const more = beyondTape(level, corners, toward, thickness, by);
    corners.push(typedWallEnd(level, last, toward, distance(before, to), by, 25.4, more).at);
  }
  const built = builtRun(level, corners, thickness, by);
  const walls = withWallsStretched(level, built).walls;
  const drawn = built.lines.map(([a, b], i) => wall(`w${walls.length + i}`, a, b, thickness));
  return levelOf({ walls: [...walls, ...drawn] });
}

function expectTaped(level: Level, tape: readonly XY[], by: TapedBy): void {
  const model = buildLevel(level);
  const lengths = level.walls.map((each): Mm => wallLengths(model, each)[by]);
  expect(lengths).toHaveLength(tape.length - 1);
  for (const [i, length] of lengths.entries())
    expect(length).toBeCloseTo(distance(tape[i] as XY, tape[i + 1] as XY), 1);
}

/** Expects the same walls, wherever they are on the page. */
function expectSameWalls({ walls }: Level, wanted: Level): void {
  const [a, b] = [walls[0]?.from ?? [0, 0], wanted.walls[0]?.from ?? [0, 0]];
  expect(walls).toHaveLength(wanted.walls.length);
  for (const [i, { from, to }] of walls.entries()) {
    const other = wanted.walls[i];
    for (const [here, there] of [
      [from, other?.from],
      [to, other?.to],
    ] as const) {
      expect(here[0] - a[0]).toBeCloseTo((there?.[0] ?? 0) - b[0], 1);
      expect(here[1] - a[1]).toBeCloseTo((there?.[1] ?? 0) - b[1], 1);
    }
  }
}

/** Returns whether the first part of a run turns: until a run has turned to one side, it is not known which of its faces was taped. */
const knowsItsSide = (points: readonly XY[], split: number): boolean => {
  const turns = (count: number) =>
    points.slice(2, count + 1).reduce((sum, c, i) => {
      const [a, b] = [points[i] as XY, points[i + 1] as XY];
      const [ux, uy, vx, vy] = [b[0] - a[0], b[1] - a[1], c[0] - b[0], c[1] - b[1]];
      return sum + Math.atan2(ux * vy - uy * vx, ux * vx + uy * vy);
    }, 0);
  const [part, all] = [turns(split), turns(points.length)];
  return split === 1 || (Math.abs(part) > 0.1 && part > 0 === all > 0);
};

describe('walls that are ended early and go on from their open end', () => {
  it('close the room with every wall as long as was typed, however the building stands', () => {
    fc.assert(
      fc.property(posed, (pose) => {
        const tape = moved(ELL, pose);
        const round = [...tape, tape[0] as XY];
        fc.pre(knowsItsSide(round, pose.split));
        const first = withTyped(levelOf({}), round[0] as XY, round.slice(0, pose.split + 1), pose);
        const whole = withTyped(first, first.walls.at(-1)?.to ?? [0, 0], round.slice(pose.split), pose);
        expect(buildLevel(whole).rooms).toHaveLength(1);
        expectTaped(whole, round, pose.by);
      }),
      { numRuns: 200 },
    );
  });

  it('are as long as was typed with corners at any angle', () => {
    fc.assert(
      fc.property(posed, (pose) => {
        const tape = moved(ASLANT, pose);
        fc.pre(knowsItsSide(tape, pose.split));
        const first = withTyped(levelOf({}), tape[0] as XY, tape.slice(0, pose.split + 1), pose);
        const whole = withTyped(first, first.walls.at(-1)?.to ?? [0, 0], tape.slice(pose.split), pose);
        // The same as without interruption. A wall that was drawn alone is on its taped line, and so are all others with it.
        expectSameWalls(whole, withTyped(levelOf({}), tape[0] as XY, tape, pose));
      }),
      { numRuns: 200 },
    );
  });
});
