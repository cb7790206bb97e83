import { beforeEach, expect, it } from 'vitest';
import { createOpeningTool } from '../../../../src/editor/tools/opening-tool.ts';
import { at, level, openRoom, press, sketch, state, steps } from '../../../helpers/tool-stage.ts';

beforeEach(() => openRoom());

it('previews an opening along the wall under the pointer with its distances to the corners', () => {
  const tool = createOpeningTool('door');
  tool.hover(at(4000, 20));
  expect(sketch().opening).toMatchObject({ wall: { id: 'w1' }, refusal: '' });
  expect(sketch().reading[0]).toMatch(/ to the corners$/);
  tool.hover(at(4000, 3000));
  expect([sketch().opening, sketch().reading]).toEqual([null, []]);
});

it('puts it into the wall by a press, as one undo step', () => {
  press(createOpeningTool('window'), at(4000, 20));
  expect(level().openings).toMatchObject([{ wall: 'w1', kind: 'window' }]);
  expect([steps(), sketch().opening]).toEqual([1, null]);
});

it('says where it goes when the press is not on a wall', () => {
  press(createOpeningTool('door'), at(4000, 3000));
  expect([level().openings, state().message]).toEqual([[], 'A door goes into a wall. Press on the wall.']);
});

it('refuses a place where another opening stands', () => {
  press(createOpeningTool('door'), at(4000, 20));
  const short = level().walls.map((wall) => (wall.id === 'w1' ? { ...wall, to: [1000, 0] as const } : wall));
  openRoom({ walls: short });
  press(createOpeningTool('door'), at(500, 20));
  press(createOpeningTool('door'), at(500, 20));
  expect(level().openings.length).toBe(1);
  expect(state().message).not.toBe('');
});

it('takes the preview away when the pointer leaves the sheet', () => {
  const tool = createOpeningTool('door');
  tool.hover(at(4000, 0));
  expect(sketch().opening).not.toBeNull();
  tool.out?.();
  expect(sketch().opening).toBeNull();
});

it('takes the preview away on Escape', () => {
  const tool = createOpeningTool('door');
  tool.hover(at(4000, 20));
  expect([tool.cancel(), sketch().opening]).toEqual([false, null]);
});
