import { beforeEach, expect, it } from 'vitest';
import { createPlaceTool } from '../../../../src/editor/tools/place-tool.ts';
import { at, key, level, openRoom, press, sketch, state, steps } from '../../../helpers/tool-stage.ts';

beforeEach(() => openRoom());

it('previews a fixture at the pointer and places it by a press', () => {
  const tool = createPlaceTool({ kind: 'fixture', fixture: 'sump-pit' });
  tool.hover(at(5000, 4000));
  expect(sketch().previewShape).toMatchObject({ circle: { center: [5000, 4000] } });
  press(tool, at(5000, 4000));
  expect(level().fixtures).toMatchObject([{ kind: 'sump-pit', shape: { circle: { center: [5000, 4000] } } }]);
  expect([sketch().previewShape, steps(), state().selection]).toEqual([null, 1, [level().fixtures[0]?.id]]);
});

it('goes back to the select tool, but with Shift and where the tool is kept', () => {
  const desk = { kind: 'object', object: 'desk' } as const;
  state().setTool(desk);
  press(createPlaceTool(desk), at(5000, 4000, { shift: true }));
  expect(state().tool).toEqual(desk);
  state().setKeepTool(true);
  press(createPlaceTool(desk), at(5000, 1500));
  expect(state().tool).toEqual(desk);
  state().setKeepTool(false);
  press(createPlaceTool(desk), at(5000, 5000));
  expect([state().tool.kind, level().objects.length]).toEqual(['select', 4]);
});

it('turns by a right angle with R', () => {
  const tool = createPlaceTool({ kind: 'object', object: 'desk' });
  tool.hover(at(5000, 4000));
  expect([tool.key?.(key('r')), tool.key?.(key('x'))]).toEqual([true, false]);
  expect(sketch().previewShape).toMatchObject({ box: { turn: 90 } });
  tool.up(at(5000, 4000));
  expect(level().objects[1]?.shape).toMatchObject({ box: { turn: 90 } });
});

it('places a detector with the next label, on the desk where it is over it', () => {
  press(createPlaceTool({ kind: 'detector' }), at(2000, 2000));
  expect(level().detectors[1]).toMatchObject({ label: 'A2', at: [2000, 2000], base: 760 });
});

it('names a closed room, gives a named one the new use, and refuses a press outside', () => {
  press(createPlaceTool({ kind: 'room', use: 'den' }), at(6000, 5000));
  expect(level().rooms).toMatchObject([{ use: 'den', at: [6000, 5000] }]);
  press(createPlaceTool({ kind: 'room', use: 'bedroom' }), at(1000, 5000));
  expect(level().rooms).toMatchObject([{ use: 'bedroom', at: [6000, 5000] }]);
  press(createPlaceTool({ kind: 'room', use: 'den' }), at(20000, 5000));
  expect(level().rooms.length).toBe(1);
  expect(state().message).toMatch(/no closed room there/);
});

it('takes the preview away on Escape', () => {
  const tool = createPlaceTool({ kind: 'object', object: 'desk' });
  tool.hover(at(5000, 4000));
  expect([tool.cancel(), sketch().previewShape, steps()]).toEqual([false, null, 0]);
});

it.each([{ kind: 'object', object: 'desk' }, { kind: 'detector' }, { kind: 'room', use: 'den' }] as const)(
  'takes the preview of $kind away when the pointer leaves the sheet, and keeps the tool',
  (kind) => {
    state().setTool(kind);
    const tool = createPlaceTool(kind);
    const shown = () => [sketch().previewShape, sketch().previewDetector, sketch().previewName].some((each) => each);
    tool.hover(at(5000, 4000));
    expect(shown()).toBe(true);
    tool.out?.();
    expect([shown(), sketch().gaps, state().tool]).toEqual([false, [], kind]);
  },
);
