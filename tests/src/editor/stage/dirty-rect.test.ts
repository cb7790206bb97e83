import { expect, it } from 'vitest';
import type { Extent } from '../../../../geometry/plane/extent.ts';
import type { Pen } from '../../../../src/editor/paint/pen.ts';
import { dirtyRect } from '../../../../src/editor/stage/dirty-rect.ts';
import { type Picture, picture } from '../../../../src/editor/stage/picture.ts';

const area = { left: -50, top: -50, right: 350, bottom: 250 };
/** Only what `dirtyRect` reads of it. */
const pen = { area, view: { scale: 0.1, x: 0, y: 0 } } as unknown as Pen;

const extent = (minX: number, minY: number, maxX: number, maxY: number): Extent => ({ minX, minY, maxX, maxY });
const named = (name: string, dirty?: Picture['dirty']): Picture =>
  picture({ name, read: () => [], paint: () => undefined, ...(dirty && { dirty }) });
/** A picture that is dirty at the extents that it is given as its inputs. */
const spots = named('spots', (_, now) => now as readonly Extent[]);
const plain = named('plain');

it('is null where every picture has the inputs that it was painted with', () => {
  const inputs = [[1, 'a'], [extent(0, 0, 1, 1)]];
  expect(
    dirtyRect(
      [plain, spots],
      inputs,
      inputs.map((each) => [...each]),
      pen,
    ),
  ).toBeNull();
});

it('is the whole canvas where a picture that cannot say where has changed', () => {
  expect(dirtyRect([plain, spots], [[1], []], [[2], []], pen)).toEqual(area);
});

it('covers all extents that changed, with the overhang of lines', () => {
  const now = [extent(0, 0, 100, 100), extent(1000, 500, 1200, 700)];
  expect(dirtyRect([spots], [[]], [now], pen)).toEqual({ left: -12, top: -12, right: 132, bottom: 82 });
});

it('ends at the edge of the canvas, and what lies off it does not count', () => {
  const before = [[], []];
  expect(dirtyRect([spots, spots], before, [[extent(3000, 0, 9000, 100)], []], pen)).toEqual({
    left: 288,
    top: -12,
    right: 350,
    bottom: 22,
  });
  expect(dirtyRect([spots], [[]], [[extent(9000, 0, 9900, 100)]], pen)).toBeNull();
});
