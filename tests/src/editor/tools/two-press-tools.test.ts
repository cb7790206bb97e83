import { beforeEach, describe, expect, it, vi } from 'vitest';
import { createAskTool } from '../../../../src/editor/tools/ask-tool.ts';
import { createCenterTool } from '../../../../src/editor/tools/late/center-tool.ts';
import { createFrameTool } from '../../../../src/editor/tools/late/frame-tool.ts';
import { createGripTool } from '../../../../src/editor/tools/late/grip-tool.ts';
import { createMoveHereTool } from '../../../../src/editor/tools/late/move-here-tool.ts';
import { createSplitWallTool } from '../../../../src/editor/tools/late/split-wall-tool.ts';
import { at, level, openRoom, press, pull, sketch, state, steps } from '../../../helpers/tool-stage.ts';

vi.stubGlobal('document', { getElementById: () => null });
beforeEach(() => {
  openRoom();
  state().closeMenu();
});

describe('the ask tool', () => {
  it('points at the floor, and opens the menu of the spot by a press', () => {
    const tool = createAskTool();
    tool.hover(at(5000, 4000));
    expect(state().hover).toEqual({ at: [5000, 4000], id: null });
    press(tool, at(5000, 4000));
    expect([state().hover, state().menu?.at]).toEqual([null, [5000, 4000]]);
  });

  it('by finger keeps pointing at the spot that was tapped; a long press opens the menu', () => {
    const tool = createAskTool();
    const finger = { ...at(5000, 4000), touch: true };
    press(tool, finger);
    expect([state().hover?.at, state().menu]).toEqual([[5000, 4000], null]);
    tool.down(finger);
    tool.hold?.(finger);
    tool.up(finger);
    expect([state().hover, state().menu?.at]).toEqual([null, [5000, 4000]]);
  });

  it('points at nothing after Escape and after another tool is chosen', () => {
    const tool = createAskTool();
    tool.hover(at(5000, 4000));
    expect([tool.cancel(), state().hover]).toEqual([false, null]);
    tool.hover(at(5000, 4000));
    tool.leave?.();
    expect(state().hover).toBeNull();
  });
});

describe('the center tool', () => {
  it('brings the pressed point to the middle of the stage', () => {
    const tool = createCenterTool();
    press(tool, at(2000, 2000));
    expect(state().viewport).toEqual({ scale: 0.1, x: 300, y: 200 });
    expect([state().tool.kind, tool.cancel()]).toEqual(['select', false]);
  });
});

describe('the frame tool', () => {
  it('selects what lies wholly between two presses', () => {
    const tool = createFrameTool();
    press(tool, at(1000, 1000));
    tool.hover(at(5000, 4000));
    expect(sketch().marquee).toEqual([
      [1000, 1000],
      [5000, 4000],
    ]);
    press(tool, at(5000, 4000));
    expect([[...state().selection].sort(), sketch().marquee]).toEqual([['d1', 'o1'], null]);
  });

  it('selects by one drag too, and says so when nothing lies in it', () => {
    const tool = createFrameTool();
    pull(tool, at(5000, 4000), at(6000, 5000));
    tool.up(at(6000, 5000));
    expect([state().selection, state().message]).toEqual([[], 'Nothing lies entirely in that frame. Make it larger.']);
  });

  it('gives up the first corner on Escape', () => {
    const tool = createFrameTool();
    press(tool, at(1000, 1000));
    expect([tool.cancel(), sketch().marquee, tool.cancel()]).toEqual([true, null, false]);
  });
});

describe('the grip tool', () => {
  it('takes the handle at the first press and sets it at the second', () => {
    const tool = createGripTool('o1');
    press(tool, at(2600, 2300));
    expect(state().message).toBe('Press where it goes.');
    tool.hover(at(2700, 2400));
    expect(state().previewPlan).not.toBeNull();
    press(tool, at(2800, 2500));
    expect(level().objects[0]?.shape).toMatchObject({ box: { width: 1400, depth: 800 } });
    expect([steps(), state().previewPlan, state().tool.kind]).toEqual([1, null, 'select']);
  });

  it('says what to press where no handle is near', () => {
    press(createGripTool('o1'), at(6000, 5000));
    expect(state().message).toMatch(/Press one of the grips first/);
  });

  it('takes the preview back on Escape', () => {
    const tool = createGripTool('o1');
    press(tool, at(2600, 2300));
    tool.hover(at(2700, 2400));
    expect([tool.cancel(), state().previewPlan, steps(), tool.cancel()]).toEqual([true, null, 0, false]);
  });
});

describe('the move-here tool', () => {
  it('previews an item at the pointer and puts it there by a press', () => {
    const tool = createMoveHereTool(['o1']);
    tool.hover(at(5000, 4000));
    expect(state().previewPlan?.levels[0]?.objects[0]?.shape).toMatchObject({ box: { center: [5000, 4000] } });
    press(tool, at(5000, 4000));
    expect(level().objects[0]?.shape).toMatchObject({ box: { center: [5000, 4000] } });
    expect([steps(), state().previewPlan, state().tool.kind, state().selection]).toEqual([1, null, 'select', ['o1']]);
  });

  it('checks a detector at the pointer and puts it there', () => {
    const tool = createMoveHereTool(['d1']);
    tool.hover(at(5000, 4000));
    expect(state().draggedDetector).toMatchObject({ id: 'd1', at: [5000, 4000] });
    press(tool, at(5000, 4000));
    expect([level().detectors[0]?.at, state().draggedDetector]).toEqual([[5000, 4000], null]);
  });

  it('leaves everything as it was on Escape', () => {
    const tool = createMoveHereTool(['o1']);
    tool.hover(at(5000, 4000));
    expect([tool.cancel(), state().previewPlan, steps(), state().tool.kind]).toEqual([true, null, 0, 'select']);
  });
});

describe('the split-wall tool', () => {
  it('shows the lengths to the corners, and splits the wall at the press', () => {
    const tool = createSplitWallTool('w1');
    tool.hover(at(3000, 0));
    expect(sketch().reading[0]).toMatch(/ to the corners$/);
    press(tool, at(3000, 0));
    expect([level().walls.length, steps(), state().tool.kind]).toEqual([5, 1, 'select']);
    expect(level().walls.some(({ to }) => to[0] === 3000 && to[1] === 0)).toBe(true);
  });

  it('splits nothing after Escape', () => {
    const tool = createSplitWallTool('w1');
    tool.hover(at(3000, 0));
    expect([tool.cancel(), level().walls.length, sketch().gaps]).toEqual([true, 4, []]);
  });
});
