import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type RunningDimension, runningDimensions } from '../../../geometry/dimension/running-dimensions.ts';
import { movableEnds, withDimension } from '../../../geometry/edit/dimension-edit.ts';
import { wallsAroundOutline } from '../../../geometry/edit/wall-run.ts';
import { buildLevel } from '../../../geometry/level/build-level.ts';
import type { Level, Mm, Wall, XY } from '../../../geometry/plan/model.ts';
import { parsePlan } from '../../../geometry/planfile/parse.ts';
import { formatLength } from '../../../geometry/units/index.ts';
import { levelOf, wall } from '../../helpers/level-of.ts';

/** The plain basement: 34 ft by 24 ft 4 in inside, a partition, three windows, two doors. */
const parsed = parsePlan(readFileSync('samples/01-plain-basement.plan.json', 'utf8'));
if (!parsed.ok) throw new Error('the sample is no plan');
const level = parsed.plan.levels[0] as Level;
const model = buildLevel(level);

const words = ({ length }: RunningDimension) => formatLength(length, 'feet-inches');
const onTop = ({ from, to }: RunningDimension) => Math.abs(from[1]) + Math.abs(to[1]) < 0.01;
const of = (now: Level) => runningDimensions(buildLevel(now));
const wholes = (now: Level) => of(now).filter(({ row }) => row === 'whole');
const between = (now: Level, a: string, b: string): RunningDimension => {
  const end = ({ ends }: RunningDimension, at: 0 | 1) => {
    const one = ends[at];
    return one.kind === 'jamb' ? one.opening : 'corner';
  };
  const found = of(now).find((each) => each.row === 'string' && end(each, 0) === a && end(each, 1) === b);
  if (!found) throw new Error(`no length from ${a} to ${b}`);
  return found;
};
function changed(dimension: RunningDimension, wanted: Mm, moves: 'from' | 'to', now = level): Level {
  const edit = withDimension(buildLevel(now), dimension, wanted, moves, 'feet-inches');
  if (!edit.ok) throw new Error(edit.reason);
  return edit.level;
}

const SLANTED: readonly XY[] = [
  [0, 0],
  [6000, 900],
  [5200, 4000],
  [-700, 3600],
];
const BAY: readonly XY[] = [
  [0, 0],
  [6000, 0],
  [7200, 2000],
  [6000, 4000],
  [0, 4000],
];
/** Direction of a wall to a hundredth of a degree. */
const bearing = ({ from, to }: Wall) => Math.round((Math.atan2(to[1] - from[1], to[0] - from[0]) * 18_000) / Math.PI);

describe('runningDimensions', () => {
  it('has the rooms as they are taped: faces 249 3/4 in and 153 3/4 in apart, 24 ft the other way', () => {
    // Computed by hand from the file: 6400.8 minus half of 114.3 is 6343.65; 10363.2 minus 6457.95 is 3905.25; 7315.2 is 24 ft.
    expect(wholes(level).map(words)).toEqual(
      expect.arrayContaining(['20 ft 9 3/4 in', '24 ft', '12 ft 9 3/4 in', '24 ft']),
    );
  });

  it('strings the windows of a face from corner to corner', () => {
    const string = of(level).filter((each) => each.row === 'string' && onTop(each));
    // Computed by hand: the file's offsets are from the end of the wall's center-line, 4 in beyond the corner.
    expect(string.map(words)).toEqual(['4 ft', '3 ft', '5 ft 6 in', '3 ft', '5 ft 3 3/4 in']);
  });

  it('reads every length from the left or from above', () => {
    for (const { from, to } of of(level)) {
      const [dx, dy] = [to[0] - from[0], to[1] - from[1]];
      expect(Math.abs(dx) >= Math.abs(dy) ? dx : dy).toBeGreaterThan(0);
    }
  });

  it('lists an opening of an interior wall once, though it has two faces', () => {
    const widths = of(level).filter(
      ({ ends: [a, b] }) => a.kind === 'jamb' && b.kind === 'jamb' && a.opening === b.opening,
    );
    expect(widths).toHaveLength(level.openings.length);
  });

  it('lays a whole length beyond the string of its own face, and no other', () => {
    // The right-hand wall has a window, and the utility room's 24 ft are measured along it.
    const [right] = wholes(level).filter(({ from, to }) => Math.min(from[0], to[0]) > 10_000);
    expect(right && words(right)).toBe('24 ft');
    expect(right?.beyondString).toBe(true);
    const bare = { ...level, openings: [] };
    expect(wholes(bare).some(({ beyondString }) => beyondString)).toBe(false);
  });

  it('is nothing on an empty level', () => {
    expect(of({ ...level, walls: [], openings: [] })).toEqual([]);
  });
});

describe('withDimension', () => {
  const family = () => wholes(level).find((each) => words(each) === '20 ft 9 3/4 in') as RunningDimension;

  it('moves the partition that ends a face, and not the outer wall that runs on behind it', () => {
    const now = changed(family(), 6096, 'to');
    const wall = (id: string) => now.walls.find((each) => each.id === id);
    // 20 ft and half of 4 1/2 in.
    expect(wall('w5')?.from[0]).toBeCloseTo(6096 + 57.15, 3);
    expect(wall('w5')?.to[0]).toBeCloseTo(6096 + 57.15, 3);
    expect([wall('w1'), wall('w2'), wall('w3'), wall('w4')]).toEqual(level.walls.slice(0, 4));
  });

  // Common practice, no published source: the wall that was taped wrong moves parallel to itself, and the others keep their directions.
  it.each([
    ['four slanted walls', SLANTED],
    ['a bay', BAY],
  ])('in a room of %s, whichever face and end, comes to the length and turns no wall', (_, corners) => {
    const walls = wallsAroundOutline(corners, 200).map((line, i) => wall(`w${i}`, ...line, 200));
    const room = levelOf({ walls, rooms: [{ id: 'r1', name: 'Den', use: 'den', at: [3000, 2000] }] });
    const lengths = wholes(room);
    expect(lengths.length).toBeGreaterThan(3);
    for (const each of lengths) {
      for (const moves of movableEnds(buildLevel(room), each)) {
        const now = changed(each, each.length + 150, moves, room);
        expect(wholes(now).find(({ key }) => key === each.key)?.length).toBeCloseTo(each.length + 150, 2);
        expect(now.walls.map(bearing)).toEqual(room.walls.map(bearing));
      }
    }
  });

  it('takes along what stands against the wall that moves', () => {
    const now = changed(family(), 6096, 'to');
    const grille = (each: Level) => each.fixtures.find(({ id }) => id === 'f8')?.shape;
    const [before, after] = [grille(level), grille(now)];
    if (!before || !after || !('box' in before) || !('box' in after)) throw new Error('the grille is a box');
    expect(after.box.center[0] - before.box.center[0]).toBeCloseTo(6096 - 6343.65, 3);
  });

  it('moves the outer wall at the other end, and the walls that it meets stay closed', () => {
    const now = changed(family(), 6096, 'from');
    expect(buildLevel(now).rooms).toHaveLength(2);
    expect(now.walls.find(({ id }) => id === 'w5')).toEqual(level.walls[4]);
    expect(now.walls.find(({ id }) => id === 'w4')?.from[0]).toBeCloseTo(-101.6 + 247.65, 3);
    // Openings in the stretched walls keep their position on the page.
    expect(between(now, 'o1', 'o2').from[0]).toBeCloseTo(between(level, 'o1', 'o2').from[0], 3);
  });

  it('slides the opening whose jamb it measures, whichever way its wall was drawn', () => {
    // The door in w3, which runs from right to left: 2 ft 6 in from the left corner.
    const dimension = between(level, 'corner', 'o4');
    expect(dimension.length).toBeCloseTo(762, 3);
    const now = changed(dimension, 914.4, 'to');
    expect(between(now, 'corner', 'o4').length).toBeCloseTo(914.4, 3);
    expect(now.openings.find(({ id }) => id === 'o4')?.width).toBe(914.4);
  });

  it('makes an opening wider away from the jamb that stays', () => {
    const width = between(level, 'o4', 'o4');
    for (const [moves, stays] of [
      ['to', 'from'],
      ['from', 'to'],
    ] as const) {
      const now = between(changed(width, 762, moves), 'o4', 'o4');
      expect(now.length).toBeCloseTo(762, 3);
      expect(now[stays][0]).toBeCloseTo(width[stays][0], 3);
    }
  });

  it('between two openings moves the one that is asked for', () => {
    const gap = between(level, 'o1', 'o2');
    expect(movableEnds(model, gap)).toEqual(['to', 'from']);
    expect(changed(gap, 1524, 'to').openings[0]).toEqual(level.openings[0]);
    expect(changed(gap, 1524, 'from').openings[1]).toEqual(level.openings[1]);
  });

  it('refuses in words what cannot stand', () => {
    const refusal = (dimension: RunningDimension, wanted: Mm, moves: 'from' | 'to') => {
      const edit = withDimension(model, dimension, wanted, moves, 'feet-inches');
      return edit.ok ? '' : edit.reason;
    };
    expect(refusal(between(level, 'o1', 'o2'), 9000, 'to')).toMatch(/past the end of its wall/);
    expect(refusal(between(level, 'corner', 'o1'), 3400, 'to')).toMatch(/over a window/);
    expect(refusal(between(level, 'corner', 'o1'), 1000, 'from')).toMatch(/Move the other end/);
    expect(refusal(family(), 5, 'to')).toMatch(/at least 1 in/);
    expect(refusal(family(), 12_000, 'to')).not.toBe('');
  });

  it('comes to the length that was asked for, and back to the level that was', () => {
    const all = runningDimensions(model);
    fc.assert(
      fc.property(fc.nat(all.length - 1), fc.nat(1), fc.integer({ min: -200, max: 200 }), (index, end, more) => {
        const dimension = all[index] as RunningDimension;
        const moves = movableEnds(model, dimension)[end];
        if (!moves) return;
        const edit = withDimension(model, dimension, dimension.length + more, moves, 'metric');
        if (!edit.ok) return;
        const stays = moves === 'to' ? 'from' : 'to';
        const after = of(edit.level).find(
          (each) =>
            each.row === dimension.row &&
            Math.hypot(each[stays][0] - dimension[stays][0], each[stays][1] - dimension[stays][1]) < 0.01 &&
            Math.abs(each.length - dimension.length - more) < 0.01,
        );
        expect(after).toBeDefined();
        const back = withDimension(
          buildLevel(edit.level),
          after as RunningDimension,
          dimension.length,
          moves,
          'metric',
        );
        expect(back.ok && back.level.openings.map(({ offset }) => Math.round(offset * 100))).toEqual(
          level.openings.map(({ offset }) => Math.round(offset * 100)),
        );
      }),
    );
  });
});
