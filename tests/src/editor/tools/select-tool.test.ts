import { beforeEach, describe, expect, it, vi } from 'vitest';
import { createSelectTool } from '../../../../src/editor/tools/select-tool.ts';
import { at, level, openRoom, press, pull, sketch, state, steps } from '../../../helpers/tool-stage.ts';

vi.stubGlobal('document', { getElementById: () => null });
const desk = (part = {}) => at(2000, 2000, part);
const detector = (part = {}) => at(4000, 3000, part);

beforeEach(() => {
  openRoom();
  state().closeMenu();
});

describe('a press', () => {
  it('selects the item under it, and nothing on bare floor', () => {
    press(createSelectTool(), desk());
    expect(state().selection).toEqual(['o1']);
    press(createSelectTool(), at(6000, 5000));
    expect(state().selection).toEqual([]);
  });

  it('with Shift adds an item and takes it out again', () => {
    const tool = createSelectTool();
    press(tool, desk());
    press(tool, detector({ shift: true }));
    expect(state().selection).toEqual(['o1', 'd1']);
    press(tool, detector({ shift: true }));
    expect(state().selection).toEqual(['o1']);
  });

  it('that goes on for less than a drag moves nothing', () => {
    const tool = createSelectTool();
    pull(tool, desk(), at(2030, 2000));
    tool.up(at(2030, 2000));
    expect([state().previewPlan, steps(), state().selection]).toEqual([null, 0, ['o1']]);
  });
});

describe('a drag of an item', () => {
  it('previews the move, and is one undo step at its end', () => {
    const tool = createSelectTool();
    pull(tool, desk(), at(2500, 2000), at(3000, 2500));
    expect(state().previewPlan?.levels[0]?.objects[0]?.shape).toMatchObject({ box: { center: [3000, 2500] } });
    expect(level().objects[0]?.shape).toMatchObject({ box: { center: [2000, 2000] } });
    tool.up(at(3000, 2500));
    expect(level().objects[0]?.shape).toMatchObject({ box: { center: [3000, 2500] } });
    expect([state().previewPlan, steps()]).toEqual([null, 1]);
  });

  it('is given up by Escape: the item is where it was, and no step is kept', () => {
    const tool = createSelectTool();
    pull(tool, desk(), at(3000, 2500));
    expect(tool.cancel()).toBe(true);
    tool.up(at(3000, 2500));
    expect([state().previewPlan, steps()]).toEqual([null, 0]);
    expect(level().objects[0]?.shape).toMatchObject({ box: { center: [2000, 2000] } });
  });

  it('by a second finger is given up too: the tool has no interrupt of its own', () => {
    expect(createSelectTool().interrupt).toBeUndefined();
  });
});

describe('a drag of a detector', () => {
  it('carries it beside the plan until it is dropped', () => {
    const tool = createSelectTool();
    pull(tool, detector(), at(5000, 4000));
    expect(state().draggedDetector).toMatchObject({ id: 'd1', at: [5000, 4000], byTouch: false });
    expect(level().detectors[0]?.at).toEqual([4000, 3000]);
    tool.up(at(5000, 4000));
    expect([level().detectors[0]?.at, state().draggedDetector, steps()]).toEqual([[5000, 4000], null, 1]);
  });

  it('keeps it as far from the pointer as it was taken hold of', () => {
    const tool = createSelectTool();
    pull(tool, at(4030, 2980), at(5030, 3980));
    expect(state().draggedDetector?.at).toEqual([5000, 4000]);
    tool.up(at(5030, 3980));
    expect(level().detectors[0]?.at).toEqual([5000, 4000]);
  });

  /** A selected detector under a finger. */
  const byFinger = (...ways: readonly (readonly [x: number, y: number])[]) => {
    state().select(['d1']);
    const tool = createSelectTool();
    pull(tool, detector({ touch: true }), ...ways.map(([x, y]) => at(4000 + x, 3000 + y, { touch: true })));
    return tool;
  };
  const dragged = () => state().draggedDetector?.at.map(Math.round);

  it('by a finger that slips does not move it', () => {
    byFinger([90, 0], [60, 60]);
    expect(dragged()).toEqual([4000, 3000]);
  });

  it('rises above a finger the farther it goes, and stays above it', () => {
    byFinger([290, 0]);
    // 29 px, of them 9 for the slip: 20 px aside, 12 px up.
    expect(dragged()).toEqual([4200, 2880]);
    byFinger([1090, 0]);
    expect(dragged()).toEqual([5000, 3000 - 600]);
    byFinger([5090, 0]);
    expect(dragged()).toEqual([9000, 3000 - 760]);
  });

  it('by a finger beside its middle keeps it as far from the finger', () => {
    state().select(['d1']);
    const tool = createSelectTool();
    pull(tool, at(4060, 3040, { touch: true }), at(4060 + 5090, 3040, { touch: true }));
    expect(dragged()).toEqual([9000, 3000 - 760]);
    tool.cancel();
  });

  it('by a finger that comes back is where it was', () => {
    const tool = byFinger([2000, 1000], [0, 0]);
    tool.up(detector({ touch: true }));
    expect([level().detectors[0]?.at, steps()]).toEqual([[4000, 3000], 0]);
  });

  it('by a finger that starts on one that is not selected pans', () => {
    const tool = createSelectTool();
    pull(tool, detector({ touch: true }), at(5000, 3000, { touch: true }));
    expect([state().viewport.x, state().draggedDetector]).toEqual([100, null]);
  });

  it('lifts it onto the desk that it is dragged over', () => {
    const tool = createSelectTool();
    pull(tool, detector(), desk());
    expect(state().draggedDetector?.base).toBe(760);
  });

  it('is given up by Escape', () => {
    const tool = createSelectTool();
    pull(tool, detector(), at(5000, 4000));
    expect([tool.cancel(), state().draggedDetector, level().detectors[0]?.at]).toEqual([true, null, [4000, 3000]]);
  });
});

describe('a detector that is placed in the house', () => {
  const placed = () => {
    const { plan } = state();
    const entry = { detector: 'd1', serial: '', placedBy: 'Ines', fetchedBy: '', sealed: null } as const;
    state().openPlan({ ...plan, log: [{ ...entry, tampering: 'none', note: '', photos: [], custody: [] }] });
    state().setViewport({ scale: 0.1, x: 0, y: 0 });
  };

  it('stays where it is, and the message offers to unlock it', () => {
    placed();
    const tool = createSelectTool();
    pull(tool, detector(), at(5000, 4000));
    tool.up(at(5000, 4000));
    expect([level().detectors[0]?.at, steps()]).toEqual([[4000, 3000], 0]);
    expect(state().message).toBe('A1 is placed in the house, and locked here.');
    expect(state().remark?.action).toMatchObject({ kind: 'unlock', ids: ['d1'] });
  });

  it('moves once it is unlocked, and no more when it is locked again', () => {
    placed();
    state().unlock(['d1']);
    const tool = createSelectTool();
    pull(tool, detector(), at(5000, 4000));
    tool.up(at(5000, 4000));
    expect(level().detectors[0]?.at).toEqual([5000, 4000]);
    state().lock('d1');
    pull(tool, at(5000, 4000), detector());
    tool.up(detector());
    expect(level().detectors[0]?.at).toEqual([5000, 4000]);
  });

  it('stays with the desk that it stands on', () => {
    openRoom({
      detectors: [{ id: 'd1', label: 'A1', at: [2000, 2000], base: 760, radius: 50.8, tall: 25.4, pair: null }],
    });
    placed();
    const tool = createSelectTool();
    pull(tool, at(2300, 2000), at(3300, 2000));
    tool.up(at(3300, 2000));
    expect(level().objects[0]?.shape).toMatchObject({ box: { center: [2000, 2000] } });
  });

  it('is locked anew with every plan that is opened', () => {
    placed();
    state().unlock(['d1']);
    placed();
    expect(state().unlocked).toEqual([]);
  });
});

describe('a drag on bare floor', () => {
  it('by mouse is a marquee that selects what lies wholly in it', () => {
    const tool = createSelectTool();
    pull(tool, at(1000, 1000), at(5000, 4000));
    expect(sketch().marquee).toEqual([
      [1000, 1000],
      [5000, 4000],
    ]);
    tool.up(at(5000, 4000));
    expect([[...state().selection].sort(), sketch().marquee]).toEqual([['d1', 'o1'], null]);
  });

  it('by finger pans', () => {
    const tool = createSelectTool();
    pull(tool, at(6000, 5000, { touch: true }), at(6500, 5000, { touch: true }));
    expect(state().viewport).toMatchObject({ x: 50, y: 0 });
  });

  it('by finger on an item that is not selected pans too', () => {
    const tool = createSelectTool();
    pull(tool, desk({ touch: true }), at(3000, 2000, { touch: true }));
    expect([state().viewport.x, state().previewPlan]).toEqual([100, null]);
  });
});

describe('a long press', () => {
  it('on the floor tells why not, and opens the menu where it is released', () => {
    const tool = createSelectTool();
    const floor = at(6000, 5000, { touch: true });
    tool.down(floor);
    tool.hold?.(floor);
    expect(state().hover).toEqual({ at: [6000, 5000], id: null });
    tool.up(floor);
    expect([state().hover, state().menu?.at, state().menu?.ids]).toEqual([null, [6000, 5000], []]);
  });

  it('on an item selects it and opens its menu', () => {
    const tool = createSelectTool();
    tool.down(desk({ touch: true }));
    tool.hold?.(desk({ touch: true }));
    expect(state().selection).toEqual(['o1']);
    tool.up(desk({ touch: true }));
    expect(state().menu?.ids).toEqual(['o1']);
  });

  it('that slides and is cancelled opens nothing', () => {
    const tool = createSelectTool();
    const floor = at(6000, 5000, { touch: true });
    tool.down(floor);
    tool.hold?.(floor);
    expect([tool.cancel(), state().hover, state().menu]).toEqual([true, null, null]);
  });
});

describe('Escape without a gesture', () => {
  it('selects nothing, and then has nothing to give up', () => {
    const tool = createSelectTool();
    state().select(['o1']);
    expect([tool.cancel(), state().selection]).toEqual([true, []]);
    expect(tool.cancel()).toBe(false);
  });
});

describe('a handle of the selected item', () => {
  it('reshapes by a drag', () => {
    state().select(['o1']);
    const tool = createSelectTool();
    // The corner of the desk at the lower right.
    tool.hover(at(2600, 2300));
    expect(sketch().cursor).toBe('crosshair');
    pull(tool, at(2600, 2300), at(2800, 2500));
    tool.up(at(2800, 2500));
    expect(level().objects[0]?.shape).toMatchObject({ box: { width: 1400, depth: 800 } });
    expect(steps()).toBe(1);
  });
});
