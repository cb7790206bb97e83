import { beforeEach, describe, expect, it, vi } from 'vitest';
import type { Tracing } from '../../../../geometry/plan/model.ts';
import type { HintAction } from '../../../../src/advice/guidance/hint.ts';
import { followHint } from '../../../../src/commands/go-to.ts';
import { createMoveTracingTool } from '../../../../src/editor/tools/late/move-tracing-tool.ts';
import { createTracingPointsTool } from '../../../../src/editor/tools/late/tracing-points-tool.ts';
import { at, key, level, openRoom, press, pull, sketch, state, steps } from '../../../helpers/tool-stage.ts';

const PICTURE: Tracing = {
  image: 'data:image/png;base64,iVBORw0KGgo=',
  name: 'sketch.png',
  width: 1000,
  height: 800,
  at: [4000, 3000],
  scale: 8,
  turn: 0,
  opacity: 0.5,
  shown: true,
  locked: false,
};
const picture = () => level().tracing as Tracing;

beforeEach(() => openRoom({ tracing: PICTURE }));

describe('moving the picture', () => {
  it('previews it while it is dragged, and is one undo step at the end', () => {
    const tool = createMoveTracingTool();
    pull(tool, at(1000, 1000), at(1500, 1200));
    expect(state().previewPlan?.levels[0]?.tracing?.at).toEqual([4500, 3200]);
    expect(picture().at).toEqual([4000, 3000]);
    tool.up(at(1600, 1200));
    expect([picture().at, steps(), state().previewPlan]).toEqual([[4600, 3200], 1, null]);
  });

  it('leaves it where it was on Escape', () => {
    const tool = createMoveTracingTool();
    pull(tool, at(1000, 1000), at(1500, 1200));
    expect([tool.cancel(), state().previewPlan, picture().at, tool.cancel()]).toEqual([
      true,
      null,
      [4000, 3000],
      false,
    ]);
  });

  it('keeps the move when another tool is chosen', () => {
    const tool = createMoveTracingTool();
    pull(tool, at(1000, 1000), at(1500, 1200));
    tool.leave?.();
    expect(picture().at).toEqual([4500, 3200]);
  });

  it('goes by arrow keys: one undo step however long the key is held', () => {
    vi.stubGlobal(
      'Element',
      class {
        closest = () => null;
      },
    );
    const tool = createMoveTracingTool();
    const arrow = { ...key('ArrowRight'), target: new (globalThis.Element as unknown as new () => EventTarget)() };
    expect([tool.key?.(arrow), tool.key?.(arrow), tool.key?.(key('x'))]).toEqual([true, true, false]);
    expect(state().previewPlan?.levels[0]?.tracing?.at).toEqual([4020, 3000]);
    tool.keyUp?.();
    expect([picture().at, steps()]).toEqual([[4020, 3000], 1]);
    vi.unstubAllGlobals();
  });
});

describe('two points on the picture', () => {
  it('scale it by the length that is typed for them', () => {
    const tool = createTracingPointsTool('scale');
    press(tool, at(2000, 3000));
    expect(state().message).toMatch(/other end of the length/);
    press(tool, at(6000, 3000));
    expect(sketch().typed).toBe('');
    expect([tool.typedLength?.('0'), tool.typedLength?.('8 m')]).toEqual([expect.stringMatching(/gives no scale/), '']);
    expect([picture().scale, steps(), state().tool.kind]).toEqual([16, 1, 'select']);
  });

  it('straighten it: they lie level then', () => {
    const tool = createTracingPointsTool('straighten');
    press(tool, at(2000, 3000));
    press(tool, at(6000, 3400));
    // A plan file holds thousandths of a degree.
    expect(picture().turn).toBeCloseTo((-Math.atan2(400, 4000) * 180) / Math.PI, 3);
    expect(steps()).toBe(1);
  });

  it('offer the step that follows: straighten after scale, lock after straighten', async () => {
    const offered = () => state().remark?.action as HintAction;
    const scale = createTracingPointsTool('scale');
    press(scale, at(2000, 3000));
    press(scale, at(6000, 3000));
    scale.typedLength?.('8 m');
    expect(offered().label).toBe('Straighten it');
    followHint(offered());
    expect(state().tool).toEqual({ kind: 'tracing', task: 'straighten' });
    const straighten = createTracingPointsTool('straighten');
    press(straighten, at(2000, 3000));
    press(straighten, at(6000, 3400));
    expect(offered().label).toBe('Lock it');
    followHint(offered());
    await vi.waitFor(() => expect(picture().locked).toBe(true));
    expect(state().message).toBe('The picture is locked in place. Draw over it.');
    state().undo();
    expect(picture().locked).toBe(false);
  });

  it('shift it by one drag from the first to the second', () => {
    const tool = createTracingPointsTool('shift');
    pull(tool, at(2000, 3000), at(2400, 3100));
    tool.up(at(2500, 3200));
    expect([picture().at, steps()]).toEqual([[4500, 3200], 1]);
  });

  it('are refused where they are one', () => {
    const tool = createTracingPointsTool('shift');
    press(tool, at(2000, 3000));
    press(tool, at(2010, 3000));
    expect([state().message, steps()]).toEqual([
      'The two points are the same. Press the second one somewhere else.',
      0,
    ]);
  });

  it('are forgotten on Escape, and the first one when a second finger comes down with it', () => {
    const tool = createTracingPointsTool('shift');
    press(tool, at(2000, 3000));
    expect([tool.cancel(), tool.cancel()]).toEqual([true, false]);
    tool.down(at(2000, 3000));
    tool.interrupt?.();
    expect(tool.cancel()).toBe(false);
    press(tool, at(2000, 3000));
    tool.down(at(6000, 3000));
    tool.interrupt?.();
    expect(tool.cancel()).toBe(true);
  });
});
