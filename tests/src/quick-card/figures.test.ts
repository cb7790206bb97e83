import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { XY } from '../../../geometry/plan/model.ts';
import { CAP, FIGURES, placeFigures, SPOT, type Tape } from '../../../src/quick-card/figures.ts';
import { textWidth } from '../../../src/report/text.ts';
import { evenly } from '../../helpers/evenly.ts';

const AREA = { x: 0, y: 0, width: 96, height: 92 };

/** A spot with tapes to the left and to the far wall, as near as 4 mm of paper. */
const spotWithTapes = fc.record({ x: evenly(20, 76), y: evenly(20, 72) }).chain(({ x, y }) =>
  fc.record({
    at: fc.constant<XY>([x, y]),
    left: fc.integer({ min: 4, max: 40 }),
    up: fc.integer({ min: 4, max: 40 }),
  }),
);

describe('placeFigures(tapes, spots, areas)', () => {
  it('keeps the figures apart, off the sign of the detector and on the paper', () => {
    fc.assert(
      fc.property(spotWithTapes, ({ at, left, up }) => {
        const tapes: readonly Tape[] = [
          { line: [at, [at[0] - left, at[1]]], length: '2 ft 11 3/4 in' },
          { line: [at, [at[0], at[1] - up]], length: '3 ft' },
        ];
        const boxes = placeFigures(tapes, [at], [AREA]).map(({ text, x, y }) => ({
          x,
          y,
          halfWidth: textWidth(text, FIGURES) / 2,
        }));
        const [a, b] = boxes;
        if (!a || !b) throw new Error('two figures');
        const apart = Math.abs(a.x - b.x) >= a.halfWidth + b.halfWidth || Math.abs(a.y - b.y) >= CAP;
        expect(apart).toBe(true);
        for (const { x, y, halfWidth } of boxes) {
          expect(Math.abs(x - at[0]) >= halfWidth + SPOT || Math.abs(y - at[1]) >= CAP / 2 + SPOT).toBe(true);
          // Off the tape too, by more than the halo: beside the line it reads as one.
          const [acrossFrom, downFrom] = [at[0] - left, at[1] - up];
          const isOffAcross =
            x + halfWidth < acrossFrom || x - halfWidth > at[0] || Math.abs(y - at[1]) >= CAP / 2 + 0.9;
          const isOffDown = y + CAP / 2 < downFrom || y - CAP / 2 > at[1] || Math.abs(x - at[0]) >= halfWidth + 0.9;
          expect([isOffAcross, isOffDown]).toEqual([true, true]);
          expect(x - halfWidth >= AREA.x && x + halfWidth <= AREA.x + AREA.width).toBe(true);
        }
      }),
    );
  });
});
