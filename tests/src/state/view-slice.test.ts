import { beforeEach, describe, expect, it } from 'vitest';
import { toPlan, toScreen } from '../../../src/state/viewport.ts';
import { openRoom, state } from '../../helpers/tool-stage.ts';

const UPRIGHT = { width: 390, height: 500 } as const;
const ON_ITS_SIDE = { width: 756, height: 200 } as const;
/** How much of the stage the room of 8.2 by 6.2 m takes, as a share of the tighter side. */
function share(): number {
  const { viewport, stageSize } = state();
  return Math.max((8200 * viewport.scale) / stageSize.width, (6200 * viewport.scale) / stageSize.height);
}
const middle = () => {
  const { viewport, stageSize } = state();
  return toPlan(viewport, [stageSize.width / 2, stageSize.height / 2]);
};

beforeEach(() => {
  openRoom();
  state().setStageSize(UPRIGHT);
  state().fit();
});

describe('a stage of another size', () => {
  it.each([UPRIGHT, ON_ITS_SIDE, { width: 1000, height: 800 }])('the plan takes most of $width × $height', (size) => {
    state().setStageSize(size);
    expect(share()).toBeGreaterThan(0.65);
    expect(share()).toBeLessThan(0.9);
  });

  it('shows the whole level again on a rotated device, also where the sheet was only moved', () => {
    const { viewport } = state();
    state().setStageSize(ON_ITS_SIDE);
    const whole = state().viewport;
    state().setStageSize(UPRIGHT);
    expect(state().viewport).toEqual(viewport);
    state().setViewport({ ...viewport, x: viewport.x + 40 });
    state().setStageSize(ON_ITS_SIDE);
    expect(state().viewport).toEqual(whole);
  });

  it('keeps the spot in its middle and the enlargement on a rotated device that was zoomed; back again all is as before', () => {
    state().zoomBy(3);
    const [before, spot] = [state().viewport, middle()];
    state().setStageSize(ON_ITS_SIDE);
    expect(middle()[0]).toBeCloseTo(spot[0], 6);
    expect(middle()[1]).toBeCloseTo(spot[1], 6);
    expect(share()).toBeGreaterThan(1.9);
    state().setStageSize(UPRIGHT);
    expect(state().viewport.scale).toBeCloseTo(before.scale, 9);
    expect(toScreen(state().viewport, [0, 0])[0]).toBeCloseTo(toScreen(before, [0, 0])[0], 6);
  });

  it('keeps its scale where a column opens beside it', () => {
    state().setStageSize({ width: 900, height: 700 });
    state().zoomBy(2);
    const { scale } = state().viewport;
    const spot = middle();
    state().setStageSize({ width: 600, height: 700 });
    expect(state().viewport.scale).toBe(scale);
    expect(middle()[0]).toBeCloseTo(spot[0], 6);
  });
});
