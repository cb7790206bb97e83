import { readFileSync } from 'node:fs';
import { beforeEach, expect, it } from 'vitest';
import { parsePlan } from '../../../../geometry/planfile/parse.ts';
import { readOverlay } from '../../../../src/editor/overlay/overlay-inputs.ts';
import { clearSketch, useSketch } from '../../../../src/editor/overlay/sketch.ts';
import { sameInputs } from '../../../../src/editor/stage/picture.ts';
import { selectLevel } from '../../../../src/state/selectors.ts';
import { useAppStore } from '../../../../src/state/store.ts';

const read = parsePlan(readFileSync('samples/01-plain-basement.plan.json', 'utf8'));
if (!read.ok) throw new Error('the plain basement cannot be read');
const { plan } = read;
const state = useAppStore.getState;

/** Whether the overlay would be repainted after `change`. */
function changesOverlay(change: () => void): boolean {
  const before = readOverlay();
  change();
  return !sameInputs(before, readOverlay());
}

const [level] = plan.levels;
if (!level) throw new Error('no level');
/** The same plan with its first wall thicker, as a drag in progress would have it. */
const drafted = (thickness: number) => ({
  ...plan,
  levels: plan.levels.map((each) =>
    each.id === level.id
      ? { ...each, walls: each.walls.map((wall, i) => (i === 0 ? { ...wall, thickness } : wall)) }
      : each,
  ),
});

beforeEach(() => {
  state().openPlan(plan);
  state().setHover(null);
  clearSketch();
});

it('nothing is repainted while nothing changes, nor where only the sheet is panned', () => {
  expect(changesOverlay(() => undefined)).toBe(false);
  expect(changesOverlay(() => state().setViewport({ ...state().viewport, x: 17 }))).toBe(false);
});

it('the overlay follows the selection, and the pointer', () => {
  expect(changesOverlay(() => state().select([selectLevel(state()).detectors[0]?.id ?? '']))).toBe(true);
  expect(changesOverlay(() => useSketch.setState({ pointer: [1, 2] }))).toBe(true);
});

it('while a wall is dragged the pointer alone repaints nothing, unless a note with lengths goes along with it', () => {
  state().setPreviewPlan(drafted(120));
  expect(changesOverlay(() => useSketch.setState({ pointer: [3, 4] }))).toBe(false);
  useSketch.setState({ reading: ['12 ft'] });
  expect(changesOverlay(() => useSketch.setState({ pointer: [5, 6] }))).toBe(true);
  state().setPreviewPlan(null);
});
