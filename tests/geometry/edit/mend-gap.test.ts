import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { mendedGap } from '../../../geometry/edit/mend-gap.ts';
import { MENDABLE } from '../../../geometry/edit/mendable.ts';
import { buildLevel } from '../../../geometry/level/build-level.ts';
import type { Level, Wall, XY } from '../../../geometry/plan/model.ts';
import { boxWalls, levelOf, wall } from '../../helpers/level-of.ts';

/** Fixes the gaps of a level one after the other, as the buttons do. */
function mended(level: Level): Level {
  const [notice] = buildLevel(level).notices.filter(({ kind }) => MENDABLE.includes(kind));
  if (!notice) return level;
  const edit = mendedGap(level, notice, 'feet-inches');
  if (!edit.ok) throw new Error(edit.reason);
  return mended(edit.level);
}
const roomsOf = (level: Level) => buildLevel(level).rooms.length;
const gapsOf = (level: Level) => buildLevel(level).notices.filter(({ kind }) => MENDABLE.includes(kind));
const around = boxWalls(0, 0, 6000, 4000, 200);
const end = ({ walls }: Level, id: string) => walls.find((each) => each.id === id);

describe('mendedGap(level, notice)', () => {
  it('lengthens a partition that stops 4 in short to the wall, straight on', () => {
    const level = levelOf({ walls: [...around, wall('p', [0, 2000], [5898.4, 2000])] });
    expect(gapsOf(level).map(({ kind, length }) => [kind, Math.round(length ?? 0)])).toEqual([['gap-open', 102]]);
    const now = mended(level);
    expect(end(now, 'p')).toMatchObject({ from: [0, 2000], to: [6000, 2000] });
    expect([roomsOf(level), roomsOf(now)]).toEqual([1, 2]);
    expect(now.walls.slice(0, 4)).toEqual(around);
  });

  it('whichever end it is, and keeps the door of the partition where it was', () => {
    const door = { id: 'o', wall: 'p', kind: 'door', offset: 1000, width: 800, bottom: 0, top: 2000 } as const;
    const level = levelOf({ walls: [...around, wall('p', [101.6, 2000], [6000, 2000])], openings: [door] });
    const now = mended(level);
    expect(end(now, 'p')?.from).toEqual([0, 2000]);
    expect(now.openings[0]?.offset).toBeCloseTo(1101.6, 6);
  });

  it('makes one corner of two ends that stop short of it', () => {
    const open: readonly Wall[] = [
      ...around.slice(0, 2),
      wall('w3', [6000, 4000], [100, 4000], 200),
      wall('w4', [0, 3900], [0, 0], 200),
    ];
    const now = mended(levelOf({ walls: open }));
    expect(end(now, 'w3')?.to).toEqual([0, 4000]);
    expect(end(now, 'w4')?.from).toEqual([0, 4000]);
    expect(roomsOf(now)).toBe(1);
  });

  it('joins two ends in line', () => {
    const now = mended(
      levelOf({ walls: [...around.slice(1), wall('a', [0, 0], [2900, 0], 200), wall('b', [3000, 0], [6000, 0], 200)] }),
    );
    expect(roomsOf(now)).toBe(1);
    expect(gapsOf(now)).toEqual([]);
  });

  it('cuts a wall back that runs past another one', () => {
    const level = levelOf({ walls: [...around, wall('p', [0, 2000], [6012, 2000])] });
    expect(gapsOf(level).map(({ kind }) => kind)).toEqual(['overshoot']);
    expect(end(mended(level), 'p')?.to).toEqual([6000, 2000]);
  });

  it('joins what counts as closed', () => {
    const level = levelOf({ walls: [...around, wall('p', [0, 2000], [5990, 2000])] });
    expect(gapsOf(level).map(({ kind }) => kind)).toEqual(['gap-closed']);
    const now = mended(level);
    expect(end(now, 'p')?.to).toEqual([6000, 2000]);
    expect(gapsOf(now)).toEqual([]);
  });

  it('says so where the walls are not there any more', () => {
    const notice = { kind: 'gap-open', ids: ['p', 'w2'], at: [5898, 2000] as XY, length: 102 } as const;
    expect(mendedGap(levelOf({ walls: around }), notice, 'feet-inches')).toMatchObject({ ok: false });
  });

  it('leaves no gap, whatever the turn of the page and the slant of the partition', () => {
    const pose = fc.record({
      degrees: fc.integer({ min: 0, max: 359 }),
      mirrored: fc.boolean(),
      down: fc.integer({ min: 500, max: 3500 }),
      short: fc.integer({ min: 20, max: 140 }),
    });
    fc.assert(
      fc.property(pose, ({ degrees, mirrored, down, short }) => {
        const [cos, sin] = [Math.cos((degrees * Math.PI) / 180), Math.sin((degrees * Math.PI) / 180)];
        const moved = ([x, y]: XY): XY => [(mirrored ? -x : x) * cos - y * sin, (mirrored ? -x : x) * sin + y * cos];
        const [dx, dy] = [6000, down - 2000];
        const share = 1 - short / Math.hypot(dx, dy);
        const walls = [...around, wall('p', [0, 2000], [dx * share, 2000 + dy * share])];
        const level = levelOf({
          walls: walls.map((each) => ({ ...each, from: moved(each.from), to: moved(each.to) })),
        });
        const now = mended(level);
        expect(gapsOf(now)).toEqual([]);
        expect(roomsOf(now)).toBe(2);
      }),
      { numRuns: 60 },
    );
  });
});
