import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { XY } from '../../../../geometry/plan/model.ts';
import type { Line } from '../../../../geometry/plane/types.ts';
import { createPlacer } from '../../../../src/drawing/labels/placer.ts';
import { slotAt } from '../../../../src/drawing/labels/slot.ts';
import { notePlace, takeStrip } from '../../../../src/editor/paint/note.ts';

const STAGE = { width: 800, height: 600 };
const SIZE = { width: 200, height: 90 };

/** How many of a thousand points of a line lie under a note. */
function within([left, top]: XY, [[ax, ay], [bx, by]]: Line): number {
  const points = Array.from(
    { length: 1000 },
    (_, i) => [ax + ((bx - ax) * i) / 999, ay + ((by - ay) * i) / 999] as const,
  );
  return points.filter(([x, y]) => x > left && x < left + SIZE.width && y > top && y < top + SIZE.height).length;
}

function placerWith(lines: readonly Line[]) {
  const placer = createPlacer(null, 10);
  for (const line of lines) takeStrip(placer, line);
  return placer;
}

describe('notePlace', () => {
  it('stands below and to the right where nothing is in the way', () => {
    expect(notePlace([300, 300], SIZE, STAGE, placerWith([])).at).toEqual([322, 322]);
  });

  it('hides no measured line, though lines run into all four corners', () => {
    const at: XY = [400, 300];
    const lines: Line[] = [
      [at, [700, 500]],
      [at, [700, 100]],
      [at, [100, 500]],
      [at, [100, 100]],
    ];
    const { at: place } = notePlace(at, SIZE, STAGE, placerWith(lines));
    for (const line of lines) expect(within(place, line)).toBe(0);
  });

  it('keeps off a figure that is written beside the pointer', () => {
    const placer = createPlacer(null, 10);
    placer.take(slotAt({ width: 90, height: 20 }, [400, 370]));
    const [left, top] = notePlace([300, 300], SIZE, STAGE, placer).at;
    expect(placer.covered(slotAt(SIZE, [left + 100, top + 45]))).toBe(0);
  });

  it('stays on its side of the pointer while that hides nothing', () => {
    const ground = placerWith([]);
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
          const [left, top] = notePlace([x, y], SIZE, STAGE, placerWith(lines)).at;
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

describe('takeStrip', () => {
  const covered = (line: Line) => placerWith([line]).covered({ x: 50, y: 50, width: 100, height: 100, turn: 0 });

  it('weighs the part of a line that lies under a note by its length', () => {
    expect(
      covered([
        [0, 50],
        [100, 50],
      ]),
    ).toBeCloseTo(2400, 9);
    expect(
      covered([
        [-50, 50],
        [150, 50],
      ]),
    ).toBeCloseTo(2400, 9);
    expect(
      covered([
        [20, 20],
        [60, 50],
      ]),
    ).toBeCloseTo(1200, 0);
  });

  it('weighs nothing beside it, and a point as nothing', () => {
    expect(
      covered([
        [-60, 10],
        [-45, 90],
      ]),
    ).toBe(0);
    expect(
      covered([
        [5, 5],
        [5, 5],
      ]),
    ).toBe(0);
  });
});
