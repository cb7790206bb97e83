import { describe, expect, it } from 'vitest';
import { imageSize } from '../../../src/report/image-size.ts';
import { PAPERS } from '../../../src/report/paper.ts';

describe('imageSize(page, count, dpi)', () => {
  it('is 200 to the inch for one sheet: 11 × 8 1/2 in make 2200 × 1700', () => {
    expect(imageSize(PAPERS.letter, 1)).toMatchObject({
      width: 2200,
      height: 1700,
      dpi: 200,
      corners: [{ x: 0, y: 0 }],
    });
  });

  it('stays within 16 million pixels and 8192 a side, and every sheet has a place of its own', () => {
    for (const paper of ['letter', 'a4'] as const) {
      for (let count = 1; count <= 40; count++) {
        const { width, height, corners, sheetWidth, sheetHeight } = imageSize(PAPERS[paper], count, 600);
        expect(width * height).toBeLessThanOrEqual(16e6);
        expect(Math.max(width, height)).toBeLessThanOrEqual(8192);
        expect(new Set(corners.map(({ x, y }) => `${x} ${y}`)).size).toBe(count);
        for (const { x, y } of corners) {
          expect(x + sheetWidth).toBeLessThanOrEqual(width);
          expect(y + sheetHeight).toBeLessThanOrEqual(height);
        }
      }
    }
  });

  it('puts many sheets side by side where that leaves them larger', () => {
    const { corners, dpi } = imageSize(PAPERS.letter, 8);
    expect(new Set(corners.map(({ x }) => x)).size).toBe(2);
    // Two by four sheets of 11 × 8 1/2 in: 748 square inches share 16 million pixels.
    expect(dpi).toBeCloseTo(Math.sqrt(16e6 / 748), 6);
  });
});
