import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { placedMenu } from '../../../../src/ui/menu/menu-position.ts';
import { evenly } from '../../../helpers/evenly.ts';

describe('placedMenu', () => {
  it('stands on the page and keeps off the spot, wherever it is pressed', () => {
    const page = fc.record({ width: fc.integer({ min: 320, max: 2600 }), height: fc.integer({ min: 560, max: 1600 }) });
    const size = fc.record({ width: fc.integer({ min: 180, max: 304 }), height: fc.integer({ min: 60, max: 900 }) });
    const share = evenly(0, 1);
    fc.assert(
      fc.property(page, size, share, share, fc.constantFrom(16, 36), (on, card, across, down, clear) => {
        const spot = [across * on.width, down * on.height] as const;
        const { left, top, maxHeight } = placedMenu(spot, card, on, clear);
        const height = Math.min(card.height, maxHeight);
        expect(left).toBeGreaterThanOrEqual(8);
        expect(top).toBeGreaterThanOrEqual(8);
        expect(left + card.width).toBeLessThanOrEqual(on.width - 8 + 1e-9);
        expect(top + height).toBeLessThanOrEqual(on.height - 8 + 1e-9);
        const [x, y] = spot;
        const off = Math.max(left - x, x - left - card.width, top - y, y - top - height);
        expect(off).toBeGreaterThanOrEqual(clear - 1e-9);
      }),
    );
  });
});
