import { describe, expect, it } from 'vitest';
import { cssPlacement, viewportMove } from '../../../../src/editor/stage/viewport-move.ts';

const painted = { scale: 0.1, x: 300, y: 200 };
const moving = { ratio: 2, atRest: false, isCheap: true, isAnchored: false };
const resting = { ...moving, atRest: true };
const movedBy = (x: number, y = 0) => ({ ...painted, x: painted.x + x, y: painted.y + y });

describe('a painted canvas under another viewport', () => {
  it('stays where nothing has changed', () => {
    expect(viewportMove(painted, painted, resting)).toBe('place');
    expect(cssPlacement(painted, painted)).toBe('');
  });

  it.each([
    { by: [1, 0], move: 'place' },
    { by: [56, -56], move: 'place' },
    { by: [0, 57], move: 'shift' },
    { by: [-400, 0], move: 'shift' },
    { by: [401, 0], move: 'repaint' },
  ])('while the sheet is panned by $by px: $move', ({ by: [x = 0, y = 0], move }) => {
    expect(viewportMove(painted, movedBy(x, y), moving)).toBe(move);
  });

  it('at rest stays by whole canvas pixels, and is repainted where it is blurred', () => {
    expect(viewportMove(painted, movedBy(10.5, 3), resting)).toBe('place');
    expect(viewportMove(painted, movedBy(10.25, 3), resting)).toBe('repaint');
  });

  it('at rest is repainted where something on it is placed by the edges of the stage', () => {
    expect(viewportMove(painted, movedBy(10), { ...resting, isAnchored: true })).toBe('repaint');
    expect(viewportMove(painted, movedBy(10), { ...moving, isAnchored: true })).toBe('place');
  });

  it('at another scale is repainted at once where that is cheap, else at rest', () => {
    const zoomed = { ...painted, scale: 0.2 };
    expect(viewportMove(painted, zoomed, moving)).toBe('repaint');
    expect(viewportMove(painted, zoomed, { ...moving, isCheap: false })).toBe('place');
    expect(viewportMove(painted, zoomed, { ...resting, isCheap: false })).toBe('repaint');
  });

  it('is placed by CSS so that every point of the plan lies where the viewport wants it', () => {
    const now = { scale: 0.2, x: 50, y: -20 };
    const [, x = '', y = '', scale = ''] =
      /translate\((.+)px, (.+)px\) scale\((.+)\)/.exec(cssPlacement(painted, now)) ?? [];
    // A point 1000 mm right of the origin and 500 mm below it.
    expect((painted.x + 100) * Number(scale) + Number(x)).toBeCloseTo(now.x + 200, 9);
    expect((painted.y + 50) * Number(scale) + Number(y)).toBeCloseTo(now.y + 100, 9);
  });
});
