import { describe, expect, it } from 'vitest';
import { TAPED_BY, type TapedBy } from '../../../../geometry/dimension/taped-by.ts';
import { wallLengths } from '../../../../geometry/dimension/wall-lengths.ts';
import { buildLevel } from '../../../../geometry/level/build-level.ts';
import type { XY } from '../../../../geometry/plan/model.ts';
import { createWallTool } from '../../../../src/editor/tools/wall-tool.ts';
import { at, key, level, openRoom, press, state, steps } from '../../../helpers/tool-stage.ts';

/** A wall as it is entered by keys: where it goes, and the length that the tape read, mm. */
type Leg = readonly ['Right' | 'Down' | 'Left' | 'Up', number];

const ROOM: readonly Leg[] = [
  ['Right', 6000],
  ['Down', 4000],
  ['Left', 6000],
  ['Up', 4000],
];
const ELL: readonly Leg[] = [
  ['Right', 6000],
  ['Down', 2500],
  ['Left', 2000],
  ['Down', 2500],
  ['Left', 4000],
  ['Up', 5000],
];

function begin(by: TapedBy, walls: Parameters<typeof openRoom>[0] = { walls: [] }): void {
  openRoom({ ...walls, objects: [], detectors: [] });
  state().setWallSettings({ ...state().wallSettings, by, outer: 200, partition: 100 });
}

/** Draws walls from a point and ends them with Escape, where they do not end by themselves. */
function draw(from: XY, legs: readonly Leg[]): void {
  state().setTool({ kind: 'wall' });
  const tool = createWallTool();
  press(tool, at(...from, { reach: 20 }));
  for (const [way, length] of legs) {
    tool.key?.(key(`Arrow${way}`));
    expect(tool.typedLength?.(`${length} mm`)).toBe('');
  }
  if (state().chain.corners.length > 0) tool.cancel();
}

/** The end of the wall that was drawn last. */
const lastEnd = (): XY => level().walls.at(-1)?.to ?? [0, 0];

/** Draws an outline that is ended early after each of so many walls, and goes on from where it was left. */
function drawInParts(legs: readonly Leg[], parts: readonly number[]): void {
  let done = 0;
  for (const part of parts) {
    draw(done === 0 ? [1000, 1000] : lastEnd(), legs.slice(done, done + part));
    done += part;
  }
}

const taped = (by: TapedBy) => {
  const model = buildLevel(level());
  return level().walls.map((wall) => Math.round(wallLengths(model, wall)[by] * 10) / 10);
};
const rooms = () => buildLevel(level()).rooms.length;

describe.each(TAPED_BY)('walls that go on where they were ended early, taped %s', (by) => {
  it.each([[[3, 1]], [[2, 2]], [[1, 3]], [[1, 2, 1]], [[1, 1, 1, 1]]])(
    'a room drawn in parts of %j walls: each is as long as was typed',
    (parts) => {
      begin(by);
      drawInParts(ROOM, parts);
      expect([rooms(), taped(by)]).toEqual([1, ROOM.map(([, length]) => length)]);
      expect(steps()).toBe(parts.length);
    },
  );

  it.each([[[5, 1]], [[4, 2]], [[3, 3]], [[2, 4]], [[1, 5]]])(
    'a room with a corner that turns in, in parts of %j walls',
    (parts) => {
      begin(by);
      drawInParts(ELL, parts);
      expect([rooms(), taped(by)]).toEqual([1, ELL.map(([, length]) => length)]);
    },
  );

  it('from the start of the first wall, backwards', () => {
    begin(by);
    draw([1000, 1000], ROOM.slice(0, 2));
    draw(level().walls[0]?.from ?? [0, 0], [
      ['Down', 4000],
      ['Right', 6000],
    ]);
    expect([rooms(), taped(by).sort()]).toEqual([1, [4000, 4000, 6000, 6000]]);
  });

  it('a wall that stands free at both ends, with a wall from each of them', () => {
    begin(by);
    draw([1000, 1000], [['Right', 6000]]);
    const [first] = level().walls;
    draw(first?.to ?? [0, 0], [['Down', 4000]]);
    draw(first?.from ?? [0, 0], [['Down', 4000]]);
    expect(taped(by)).toEqual([6000, 4000, 4000]);
  });

  it('straight on from an open end, and round', () => {
    begin(by);
    draw([1000, 1000], [['Right', 2000]]);
    draw(lastEnd(), [['Right', 4000], ...ROOM.slice(1)]);
    expect(rooms()).toBe(1);
    const lengths = taped(by);
    expect([(lengths[0] ?? 0) + (lengths[1] ?? 0), ...lengths.slice(2)]).toEqual([6000, 4000, 6000, 4000]);
  });

  it('round to the open end of a wall that lies ahead', () => {
    begin(by);
    // It begins in the middle of the wall above.
    draw(
      [4000, 1000],
      [
        ['Right', 3000],
        ['Down', 4000],
        ['Left', 6000],
      ],
    );
    draw(lastEnd(), [
      ['Up', 4000],
      ['Right', 3000],
    ]);
    expect(rooms()).toBe(1);
    const lengths = taped(by);
    expect([(lengths[0] ?? 0) + (lengths[4] ?? 0), ...lengths.slice(1, 4)]).toEqual([6000, 4000, 6000, 4000]);
  });

  it('a partition that was ended early, with a turn to the wall on its right', () => {
    // Center-lines 8000 by 6000, walls 200 thick; partitions 100.
    const [half, sign] = [100, { inside: 1, center: 0, outside: -1 }[by]];
    begin(by, {});
    draw([3000, 0], [['Down', 2000]]);
    draw(lastEnd(), [['Right', 5000 - sign * (half + 50)]]);
    expect(rooms()).toBe(2);
    const clear = 2000 - { inside: 0, center: 150, outside: 300 }[by];
    expect(Math.min(...buildLevel(level()).rooms.map(({ floorArea }) => floorArea))).toBeCloseTo(clear * 4850, 0);
  });

  it('an annex from the corner of a house: its walls are as long as was typed, and it closes', () => {
    begin(by, {});
    state().setWallSettings({ ...state().wallSettings, partition: 200 });
    const more = { inside: -100, center: 0, outside: 100 }[by] * 2;
    draw(
      [8000, 0],
      [
        ['Right', 3000],
        ['Down', 6000 + more],
        ['Left', 3000],
      ],
    );
    const drawn = level().walls.slice(4);
    expect(rooms()).toBe(2);
    expect(drawn.map(({ to }) => to)).toEqual([
      [drawn[0]?.to[0], 0],
      [drawn[0]?.to[0], 6000],
      [8000, 6000],
    ]);
  });

  it('an opening in the wall that goes along stays where it is', () => {
    begin(by);
    draw([1000, 1000], [['Right', 6000]]);
    state().addItem('openings', { wall: 'w1', kind: 'door', offset: 2000, width: 800, bottom: 0, top: 2000 });
    const x = (level().walls[0]?.from[0] ?? 0) + 2000;
    draw(level().walls[0]?.from ?? [0, 0], [['Down', 4000]]);
    expect((level().walls[0]?.from[0] ?? 0) + (level().openings[0]?.offset ?? 0)).toBeCloseTo(x, 3);
  });
});
