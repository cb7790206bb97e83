import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { XY } from '../../../../../geometry/plan/model.ts';
import { placeAtFigure, placeBesideCorner } from '../../../../../src/editor/lengths/boxes/box-place.ts';

const STAGE = { width: 900, height: 600 };
const onStage: fc.Arbitrary<XY> = fc.tuple(fc.integer({ min: 0, max: 900 }), fc.integer({ min: 0, max: 600 }));

describe('placeBesideCorner(corner, stage, height)', () => {
  it.each([
    ['in the upper half: right of it and below', [400, 200], { left: 414, top: 214 }],
    ['at the right edge: left of it', [880, 200], { left: 880 - 14 - 280, top: 214 }],
    ['at the lower edge: above it', [400, 590], { left: 414, top: 590 - 14 - 330 }],
    ['where it fits neither below nor above: as low as it fits', [400, 300], { left: 414, top: 600 - 330 }],
    ['off the stage at the upper left: at its corner', [-500, -500], { left: 0, top: 0 }],
  ] as const)('%s', (_, corner, place) => {
    expect(placeBesideCorner(corner, STAGE, 330)).toEqual(place);
  });
});

it('placeBesideCorner(corner, stage, height) leaves the walls free that run across and down from the corner', () => {
  fc.assert(
    fc.property(onStage, fc.constantFrom(40, 150, 230), ([x, y], height) => {
      const { left, top } = placeBesideCorner([x, y], STAGE, height);
      expect(left >= 0 && left + 280 <= STAGE.width && top >= 0 && top + height <= STAGE.height).toBe(true);
      expect([left < x && x < left + 280, top < y && y < top + height]).toEqual([false, false]);
    }),
  );
});

describe('placeAtFigure(figure, stage, height)', () => {
  it('is below the figure where there is space', () => {
    expect(placeAtFigure([400, 300], STAGE, 150)).toEqual({ left: 260, top: 320 });
  });

  it('is above it at the lower edge: the height of the field decides', () => {
    expect(placeAtFigure([400, 590], STAGE, 150)).toEqual({ left: 260, top: 590 - 20 - 150 });
    expect(placeAtFigure([400, 590], STAGE, 230)).toEqual({ left: 260, top: 590 - 20 - 230 });
    expect(placeAtFigure([400, 590], STAGE, 310)).toEqual({ left: 260, top: 590 - 20 - 310 });
  });

  it('lies on the stage and leaves the figure free, wherever that is', () => {
    fc.assert(
      fc.property(onStage, fc.constantFrom(40, 150, 230), ([x, y], height) => {
        const { left, top } = placeAtFigure([x, y], STAGE, height);
        expect(left >= 8 && left + 280 <= STAGE.width - 8 && top >= 8 && top + height <= STAGE.height - 8).toBe(true);
        expect(left < x && x < left + 280 && top < y + 12 && y - 12 < top + height).toBe(false);
      }),
    );
  });
});
