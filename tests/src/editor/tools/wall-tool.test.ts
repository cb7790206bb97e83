import { beforeEach, describe, expect, it } from 'vitest';
import { withThicknessMeasured } from '../../../../geometry/edit/wall-thickness.ts';
import { useSketch } from '../../../../src/editor/overlay/sketch.ts';
import { createWallTool } from '../../../../src/editor/tools/wall-tool.ts';
import { FIRST_WALL_SETTINGS, withSaid } from '../../../../src/state/wall-settings.ts';
import { at, key, level, openRoom, press, sketch, state, steps } from '../../../helpers/tool-stage.ts';

beforeEach(() => {
  openRoom({ walls: [], objects: [], detectors: [] });
  state().setTool({ kind: 'wall' });
});
const corners = () => state().chain.corners;

it('sets corner after corner, and shows where the next one goes', () => {
  const tool = createWallTool();
  press(tool, at(0, 0));
  tool.hover(at(3000, 0));
  expect(sketch().nextCorner).toEqual([3000, 0]);
  press(tool, at(4000, 0));
  expect([corners(), level().walls, steps()]).toEqual([
    [
      [0, 0],
      [4000, 0],
    ],
    [],
    0,
  ]);
});

it('closed onto its start makes the room in one undo step, and goes back to the select tool', () => {
  const tool = createWallTool();
  for (const [x, y] of [
    [0, 0],
    [4000, 0],
    [4000, 3000],
    [0, 3000],
    [0, 0],
  ] as const)
    press(tool, at(x, y));
  expect([level().walls.length, corners(), steps(), state().tool.kind]).toEqual([4, [], 1, 'select']);
});

it('with Shift stays chosen when the room is closed', () => {
  const tool = createWallTool();
  for (const [x, y] of [
    [0, 0],
    [4000, 0],
    [4000, 3000],
    [0, 3000],
  ] as const)
    press(tool, at(x, y));
  press(tool, at(0, 0, { shift: true }));
  expect([level().walls.length, state().tool.kind]).toEqual([4, 'wall']);
});

it('on Escape puts the walls that are drawn on the level', () => {
  const tool = createWallTool();
  press(tool, at(0, 0));
  press(tool, at(4000, 0));
  expect(tool.cancel()).toBe(true);
  expect([level().walls.length, corners()]).toEqual([1, []]);
  expect(tool.cancel()).toBe(false);
});

it('keeps its corners when a second finger comes down', () => {
  const tool = createWallTool();
  press(tool, at(0, 0));
  tool.down(at(4000, 0));
  tool.interrupt?.();
  expect(corners()).toEqual([[0, 0]]);
});

it('puts the walls on the level when another tool is chosen', () => {
  const tool = createWallTool();
  press(tool, at(0, 0));
  press(tool, at(4000, 0));
  state().setTool({ kind: 'select' });
  tool.leave?.();
  expect(level().walls.length).toBe(1);
});

describe('the keyboard', () => {
  it('opens the length field by a digit once a corner is set, not before', () => {
    const tool = createWallTool();
    expect(tool.key?.(key('3'))).toBe(false);
    press(tool, at(0, 0));
    expect([tool.key?.(key('3')), sketch().typed]).toEqual([true, '3']);
  });

  it('makes the wall as long as was typed, in the direction of the pointer', () => {
    const tool = createWallTool();
    press(tool, at(0, 0));
    tool.hover(at(1000, 0));
    expect([tool.typedLength?.('2.5 m'), corners()]).toEqual([
      '',
      [
        [0, 0],
        [2500, 0],
      ],
    ]);
  });

  it('makes it in the direction of an arrow key', () => {
    const tool = createWallTool();
    press(tool, at(0, 0));
    tool.key?.(key('ArrowDown'));
    expect([tool.typedLength?.('2 m'), corners()]).toEqual([
      '',
      [
        [0, 0],
        [0, 2000],
      ],
    ]);
  });

  it('sets the corner where the sheet is pressed, never at a length that is half typed', () => {
    const tool = createWallTool();
    press(tool, at(0, 0));
    tool.key?.(key('3'));
    tool.hover(at(1000, 0));
    press(tool, at(1000, 0));
    expect(corners()).toEqual([
      [0, 0],
      [1000, 0],
    ]);
  });

  it('refuses no length and no direction in words', () => {
    const tool = createWallTool();
    press(tool, at(0, 0));
    expect(tool.typedLength?.('0')).toMatch(/more than 0/);
    expect(tool.typedLength?.('2 m')).toMatch(/direction/);
    expect(corners()).toEqual([[0, 0]]);
  });

  it('takes the last corner back by Backspace', () => {
    const tool = createWallTool();
    press(tool, at(0, 0));
    press(tool, at(4000, 0));
    expect([tool.key?.(key('Backspace')), corners()]).toEqual([true, [[0, 0]]]);
  });

  it('closes straight by C', () => {
    const tool = createWallTool();
    for (const [x, y] of [
      [0, 0],
      [4000, 0],
      [4000, 3000],
    ] as const)
      press(tool, at(x, y));
    expect([tool.key?.(key('c')), level().walls.length, state().tool.kind]).toEqual([true, 3, 'select']);
  });
});

it('goes back to the select tool after a wall that reaches another one, unless it is kept', () => {
  openRoom({ objects: [], detectors: [] });
  const tool = createWallTool();
  const partition = (x: number, shift: boolean) => {
    state().setTool({ kind: 'wall' });
    press(tool, at(x, 0));
    press(tool, at(x, 6000, { shift }));
    return state().tool.kind;
  };
  expect(partition(2000, false)).toBe('select');
  expect(partition(5000, true)).toBe('wall');
  expect(level().walls).toHaveLength(6);
});

describe('a partition', () => {
  const typed = (length: string, from: readonly [number, number]) => {
    const tool = createWallTool();
    press(tool, at(...from, { reach: 20 }));
    tool.hover(at(from[0] + 2000, from[1], { reach: 20 }));
    return tool.typedLength?.(length);
  };

  it('begins on the wall whose face is pressed, however far its center-line is', () => {
    openRoom({ objects: [], detectors: [] });
    const [left] = level()
      .walls.map(({ from }) => from[0])
      .sort((a, b) => a - b);
    const thick = level().walls[0]?.thickness ?? 0;
    const tool = createWallTool();
    press(tool, at((left ?? 0) + thick / 2 + 15, 3000, { reach: 20, free: false }));
    expect(corners()[0]?.[0]).toBe(left);
  });

  it('typed to its taped length reaches the other wall, as it is taped', () => {
    openRoom({ objects: [], detectors: [] });
    const xs = level().walls.map(({ from }) => from[0]);
    const [left, right] = [Math.min(...xs), Math.max(...xs)];
    const thick = level().walls[0]?.thickness ?? 0;
    const count = level().walls.length;
    for (const [by, more] of [
      ['inside', -thick],
      ['center', 0],
      ['outside', thick],
    ] as const) {
      state().setWallSettings({ ...state().wallSettings, by });
      expect(typed(`${right - left + more} mm`, [left, 3000]), by).toBe('');
      expect(level().walls.at(-1), by).toMatchObject({ from: [left, 3000], to: [right, 3000] });
      expect(state().message, by).not.toContain('as drawn');
      state().undo();
      state().setTool({ kind: 'wall' });
      expect(level().walls).toHaveLength(count);
    }
  });

  it('a little off the tape it is joined all the same, and the drawn length is said', () => {
    openRoom({ objects: [], detectors: [] });
    state().setWallSettings({ ...state().wallSettings, by: 'inside' });
    const xs = level().walls.map(({ from }) => from[0]);
    const [left, right] = [Math.min(...xs), Math.max(...xs)];
    const thick = level().walls[0]?.thickness ?? 0;
    typed(`${right - left - thick + 12} mm`, [left, 3000]);
    expect(level().walls.at(-1)?.to).toEqual([right, 3000]);
    expect(state().message).toContain('It is joined to the wall there');
  });
});

it('its thickness is the one that was said', () => {
  state().setWallSettings({ ...state().wallSettings, by: 'inside', outer: 300 });
  const tool = createWallTool();
  press(tool, at(0, 0));
  press(tool, at(4000, 0));
  tool.cancel();
  expect(level().walls[0]?.thickness).toBe(300);
});

describe('the thickness of a new wall', () => {
  const drawn = () => {
    const tool = createWallTool();
    press(tool, at(0, 0));
    press(tool, at(4000, 0));
    tool.cancel();
    return level().walls.at(-1);
  };

  it('that nobody has entered is marked as not measured, until somebody enters or confirms it', () => {
    state().setWallSettings({ ...FIRST_WALL_SETTINGS });
    const wall = drawn();
    expect(wall).toMatchObject({ thickness: 203.2, thicknessAnswered: false });
    state().updateItem(wall?.id ?? '', { thickness: 250 });
    expect(level().walls[0]).not.toHaveProperty('thicknessAnswered');
    state().undo();
    expect(level().walls[0]).toHaveProperty('thicknessAnswered', false);
    const { id } = level();
    const before = steps();
    state().run((plan) => withThicknessMeasured(plan, id, [100]));
    // Nothing is as thick: no step of history.
    expect(steps()).toBe(before);
    expect(level().walls[0]).toHaveProperty('thicknessAnswered', false);
    state().run((plan) => withThicknessMeasured(plan, id, [203.2]));
    expect(level().walls[0]).not.toHaveProperty('thicknessAnswered');
  });

  it('that somebody has entered is not marked', () => {
    state().setWallSettings(withSaid(FIRST_WALL_SETTINGS, { outer: 203.2 }));
    expect(drawn()).not.toHaveProperty('thicknessAnswered');
    state().setWallSettings(FIRST_WALL_SETTINGS);
  });
});

describe('a length typed by finger', () => {
  const finger = (x: number, y: number) => at(x, y, { touch: true });
  const drawn = () => {
    const tool = createWallTool();
    useSketch.setState({ touch: true });
    press(tool, finger(0, 0));
    press(tool, finger(4000, 0));
    return tool;
  };

  it('typed again corrects the same wall, and shows no next one where the finger was', () => {
    const tool = drawn();
    expect(tool.typedLength?.('10 ft')).toBe('');
    useSketch.setState({ typed: null, turn: null });
    tool.typing?.();
    expect(sketch().nextCorner).toBeNull();
    expect(tool.typedLength?.('8 ft')).toBe('');
    expect(corners()).toEqual([
      [0, 0],
      [2438.4, 0],
    ]);
  });

  it('is that of the last wall also after a pinch that began elsewhere', () => {
    const tool = drawn();
    tool.down(finger(6000, 2500));
    tool.interrupt?.();
    expect(tool.typedLength?.('8 ft')).toBe('');
    expect(corners()).toEqual([
      [0, 0],
      [2438.4, 0],
    ]);
  });
});
