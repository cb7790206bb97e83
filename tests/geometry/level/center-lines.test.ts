import { describe, expect, it } from 'vitest';
import { buildLevel } from '../../../geometry/level/build-level.ts';
import { joinedCenterLines } from '../../../geometry/level/center-lines.ts';
import { NODE_TOLERANCE, SNAP_DISTANCE } from '../../../geometry/level/tolerances.ts';
import type { Notice } from '../../../geometry/level/types.ts';
import type { Wall, XY } from '../../../geometry/plan/model.ts';
import { drawn, loop, rectangle, wall } from '../../helpers/drawn.ts';

/** Returns the pieces that join ends to what they nearly meet: id of the wall, and its ends sorted by x, then y. */
function joins(walls: readonly Wall[]): [string, XY, XY][] {
  const { lines } = joinedCenterLines(walls);
  for (const { id, from, to } of walls) {
    // Drawn walls are unchanged.
    const own = lines.find(({ wall }) => wall.id === id);
    expect(JSON.stringify([own?.a, own?.b].sort())).toBe(JSON.stringify([from, to].sort()));
  }
  return lines.slice(walls.length).map(({ wall: { id }, a, b }) => [id, rounded(a), rounded(b)]);
}

function rounded([x, y]: XY): XY {
  return [Math.round(x * 1e6) / 1e6 + 0, Math.round(y * 1e6) / 1e6 + 0];
}

function notices(walls: readonly Wall[]): Pick<Notice, 'kind' | 'ids'>[] {
  return joinedCenterLines(walls).notices.map(({ kind, ids }) => ({ kind, ids }));
}

describe('wall ends', () => {
  it('that meet exactly, or within a touch, are left alone and not mentioned', () => {
    const walls = [wall('a', [0, 0], [4000, 0]), wall('b', [4000, NODE_TOLERANCE / 2], [4000, 3000])];
    expect(notices(walls)).toEqual([]);
    expect(joins(walls)).toEqual([]);
  });

  it('of a corner that misses by 10 mm each way run on to the crossing of their lines, so that no wall turns', () => {
    const walls = [wall('a', [0, 0], [3990, 0]), wall('b', [4000, 7], [4000, 3000])];
    expect(joins(walls)).toEqual([
      ['a', [3990, 0], [4000, 0]],
      ['b', [4000, 0], [4000, 7]],
    ]);
    expect(notices(walls)).toEqual([{ kind: 'gap-closed', ids: ['a', 'b'] }]);
  });

  it('of two walls in one line run on to one another: their lines do not cross', () => {
    const walls = [wall('a', [0, 0], [2000, 0]), wall('b', [2010, 0], [4000, 0])];
    expect(joins(walls)).toEqual([
      ['a', [2000, 0], [2010, 0]],
      ['b', [2000, 0], [2010, 0]],
    ]);
  });

  it('of three walls are joined two by two, and told once', () => {
    const walls = [wall('a', [0, 0], [2000, 0]), wall('b', [2006, 0], [4000, 0]), wall('c', [2003, 5], [2003, 3000])];
    expect(joins(walls)).toEqual([
      ['a', [2000, 0], [2003, 0]],
      ['a', [2000, 0], [2006, 0]],
      ['b', [2000, 0], [2006, 0]],
      ['c', [2003, 0], [2003, 5]],
      ['c', [2003, 0], [2003, 5]],
      ['b', [2003, 0], [2006, 0]],
    ]);
    expect(notices(walls)).toEqual([{ kind: 'gap-closed', ids: ['a', 'b', 'c'] }]);
  });

  it('that stop short of a wall run on to it, along their own line', () => {
    // Oblique: from (0, −3000) toward (4000, 1000), at 45°; the wall is at y = 0, 8 mm down the page.
    const walls = [wall('bar', [0, 0], [6000, 0]), wall('p', [0, -3000], [2992, -8])];
    expect(joins(walls)).toEqual([['p', [2992, -8], [3000, 0]]]);
    expect(notices(walls)).toEqual([{ kind: 'gap-closed', ids: ['bar', 'p'] }]);
  });

  it('that run past a wall by a little stay as drawn, and are told', () => {
    const walls = [wall('bar', [0, 0], [6000, 0]), wall('p', [2000, -3000], [2000, 9])];
    expect(joins(walls)).toEqual([]);
    expect(notices(walls)).toEqual([{ kind: 'overshoot', ids: ['bar', 'p'] }]);
  });

  it.each([
    ['a gap', SNAP_DISTANCE + 0.1],
    ['an overshoot', -SNAP_DISTANCE - 0.1],
  ])('with %s just beyond the snap distance are left alone', (_, gap) => {
    const walls = [wall('bar', [0, 0], [6000, 0]), wall('p', [2000, -3000], [2000, -gap])];
    expect(joins(walls)).toEqual([]);
    expect(notices(walls)).toEqual([]);
  });

  it('of a wall shorter than the snap distance are not joined to what it stands on', () => {
    expect(joins([wall('a', [0, 0], [2000, 0]), wall('short', [2000, 0], [2000, 8])])).toEqual([]);
  });

  it('are joined whatever a third wall does there', () => {
    const walls = [wall('bar', [0, 0], [6000, 0]), wall('p', [2000, -3000], [2000, -8])];
    const third = wall('third', [2000, -8], [4000, -2000]);
    for (const join of joins(walls)) expect(joins([...walls, third])).toContainEqual(join);
    const { rooms } = buildLevel(drawn([...loop('h', rectangle(0, -3000, 6000, 3000)), ...walls, third]));
    expect(rooms.length).toBe(2);
  });

  it('close a room that was drawn by hand with every corner missed by up to 12 mm', () => {
    const walls = [
      wall('n', [3, 0], [3992, 0]),
      wall('e', [4000, 8], [4000, 2995]),
      wall('s', [4006, 3000], [5, 3000]),
      wall('w', [0, 3006], [0, -7]),
    ];
    const { rooms } = buildLevel(drawn(walls));
    // Crossings of the lines: a rectangle of 4000 × 3000 on the center-lines.
    expect(rooms.map(({ floorArea }) => Math.round(floorArea))).toEqual([3800 * 2800]);
    expect(new Set(notices(walls).map(({ kind }) => kind))).toEqual(new Set(['gap-closed']));
  });
});

describe('a wall without length', () => {
  it('is named and left out', () => {
    const walls = [...loop('h', rectangle(0, 0, 4000, 3000)), wall('dot', [1000, 1000], [1000, 1000])];
    expect(notices(walls)).toEqual([{ kind: 'zero-length-wall', ids: ['dot'] }]);
    expect(joinedCenterLines(walls).lines.some((line) => line.wall.id === 'dot')).toBe(false);
  });
});

describe('the notices of a level', () => {
  const HOUSE = loop('h', rectangle(0, 0, 6000, 4000));
  const kinds = (walls: readonly Wall[]) =>
    buildLevel(drawn(walls))
      .notices.filter(({ kind }) => kind !== 'unlabelled-room')
      .map(({ kind, ids, length }) => ({ kind, ids, length }));

  it('name a gap outdoors of up to 4 ft, with its width', () => {
    const open = [wall('n', [0, 0], [5000, 0]), ...HOUSE.slice(1)];
    // The end of "n" and the corner at (6000, 0) are both loose, each 1000 from the other wall.
    expect(kinds(open)).toEqual([
      { kind: 'gap-open', ids: ['h2', 'n'], length: 1000 },
      { kind: 'gap-open', ids: ['h2', 'n'], length: 1000 },
    ]);
  });

  it('say nothing of a stub, be it ever so short, nor of a fence that starts at the house', () => {
    const stubs = [
      wall('nib', [2000, 0], [2000, 60]),
      wall('stub', [4000, 0], [4000, 1000]),
      wall('fence', [6000, 2000], [6900, 2000]),
    ];
    expect(kinds([...HOUSE, ...stubs])).toEqual([]);
  });

  it('name a stub that stops 100 mm before the wall over there', () => {
    expect(kinds([...HOUSE, wall('stub', [2000, 0], [2000, 3900])])).toEqual([
      { kind: 'gap-open', ids: ['h3', 'stub'], length: 100 },
    ]);
  });

  it('name walls that run on one another, and how far', () => {
    expect(kinds([...HOUSE, wall('pad', [1000, 0], [3000, 0])])).toEqual([
      { kind: 'walls-overlap', ids: ['h1', 'pad'], length: 2000 },
    ]);
  });
});
