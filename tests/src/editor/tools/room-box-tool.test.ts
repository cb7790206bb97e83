import { beforeEach, expect, it } from 'vitest';
import { createRoomBoxTool } from '../../../../src/editor/tools/room-box-tool.ts';
import { at, level, openRoom, press, pull, sketch, state, steps } from '../../../helpers/tool-stage.ts';

beforeEach(() => {
  openRoom({ walls: [], objects: [], detectors: [] });
  state().setTool({ kind: 'room-box' });
});

it('draws four walls in one drag, as one undo step', () => {
  const tool = createRoomBoxTool();
  pull(tool, at(0, 0), at(2000, 1000), at(4000, 3000));
  expect([sketch().box, sketch().reading]).toEqual([
    [
      [0, 0],
      [4000, 3000],
    ],
    ['4.00 m × 3.00 m inside'],
  ]);
  tool.up(at(4000, 3000));
  expect([level().walls.length, steps(), state().tool.kind, sketch().box]).toEqual([4, 1, 'select', null]);
});

it('draws them by two presses too', () => {
  const tool = createRoomBoxTool();
  press(tool, at(0, 0));
  expect(level().walls).toEqual([]);
  press(tool, at(4000, 3000));
  expect(level().walls.length).toBe(4);
});

it('refuses less than a foot in words', () => {
  const tool = createRoomBoxTool();
  pull(tool, at(0, 0), at(4000, 200));
  tool.up(at(4000, 200));
  expect([level().walls, steps()]).toEqual([[], 0]);
  expect(state().message).toMatch(/too small for a room/);
});

it('gives up the first corner on Escape', () => {
  const tool = createRoomBoxTool();
  press(tool, at(0, 0));
  expect([tool.cancel(), sketch().box, tool.cancel()]).toEqual([true, null, false]);
  press(tool, at(4000, 3000));
  expect(level().walls).toEqual([]);
});
