import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { XY } from '../../../../geometry/plan/model.ts';
import type { Line } from '../../../../geometry/plane/types.ts';
import { createPlacer } from '../../../../src/drawing/labels/placer.ts';
import { slotAt } from '../../../../src/drawing/labels/slot.ts';
import { lengthWithin, notePlace } from '../../../../src/editor/paint/note-place.ts';

const STAGE = { width: 800, height: 600 };
const SIZE = { width: 200, height: 90 };
const within = ([left, top]: XY, line: Line) => lengthWithin(line, left, top, left + SIZE.width, top + SIZE.height);

describe('notePlace', () => {
  it('stands below and to the right where nothing is in the way', () => {
    expect(notePlace([300, 300], SIZE, STAGE, { placer: createPlacer(null), lines: [] }).at).toEqual([322, 322]);
  });

  it('hides no measured line, though lines run into all four corners', () => {
    const at: XY = [400, 300];
    const lines: Line[] = [
      [at, [700, 500]],
      [at, [700, 100]],
      [at, [100, 500]],
      [at, [100, 100]],
    ];
    const { at: place } = notePlace(at, SIZE, STAGE, { placer: createPlacer(null), lines });
    for (const line of lines) expect(within(place, line)).toBe(0);
  });

  it('keeps off a figure that is written beside the pointer', () => {
    const placer = createPlacer(null);
    placer.take(slotAt({ width: 90, height: 20 }, [400, 370]));
    const [left, top] = notePlace([300, 300], SIZE, STAGE, { placer, lines: [] }).at;
    expect(placer.covered(slotAt(SIZE, [left + 100, top + 45]))).toBe(0);
  });

  it('stays on its side of the pointer while that hides nothing', () => {
    const ground = { placer: createPlacer(null), lines: [] };
    const [first] = [notePlace([300, 300], SIZE, STAGE, ground, 2)];
    expect(first.side).toBe(2);
    expect(notePlace([310, 300], SIZE, STAGE, ground, first.side).side).toBe(2);
  });

  it('stays on the stage and off the pointer, wherever that is', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 0, max: 800 }),
        fc.integer({ min: 0, max: 600 }),
        fc.array(fc.tuple(fc.integer({ min: 0, max: 800 }), fc.integer({ min: 0, max: 600 })), { maxLength: 6 }),
        (x, y, ends) => {
          const lines = ends.map((end): Line => [[x, y], end]);
          const [left, top] = notePlace([x, y], SIZE, STAGE, { placer: createPlacer(null), lines }).at;
          expect(left).toBeGreaterThanOrEqual(0);
          expect(top).toBeGreaterThanOrEqual(0);
          expect(left + SIZE.width).toBeLessThanOrEqual(STAGE.width);
          expect(top + SIZE.height).toBeLessThanOrEqual(STAGE.height);
          expect(x > left && x < left + SIZE.width && y > top && y < top + SIZE.height).toBe(false);
        },
      ),
    );
  });
});

describe('lengthWithin', () => {
  it.each([
    {
      name: 'all of it',
      line: [
        [10, 10],
        [40, 50],
      ] as Line,
      length: 50,
    },
    {
      name: 'none of it beside',
      line: [
        [-20, 10],
        [-5, 90],
      ] as Line,
      length: 0,
    },
    {
      name: 'the part that runs through',
      line: [
        [-50, 50],
        [150, 50],
      ] as Line,
      length: 100,
    },
    {
      name: 'a point',
      line: [
        [5, 5],
        [5, 5],
      ] as Line,
      length: 0,
    },
    {
      name: 'past a corner',
      line: [
        [-10, 5],
        [5, -10],
      ] as Line,
      length: 0,
    },
  ])('$name', ({ line, length }) => {
    expect(lengthWithin(line, 0, 0, 100, 100)).toBeCloseTo(length, 9);
  });
});
