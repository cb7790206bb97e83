import { readFileSync } from 'node:fs';
import { beforeEach, describe, expect, it } from 'vitest';
import type { Plan } from '../../../geometry/plan/model.ts';
import { emptyLevel, emptyPlan } from '../../../geometry/planfile/empty.ts';
import { duplicateSelection } from '../../../src/state/duplicate-selection.ts';
import { isNothingAllowed } from '../../../src/state/nothing-allowed.ts';
import {
  selectDragged,
  selectLevel,
  selectLevelBar,
  selectRegion,
  selectReports,
} from '../../../src/state/selectors.ts';
import { useAppStore } from '../../../src/state/store.ts';
import { withCorner } from '../../../src/state/wall-chain.ts';

const state = () => useAppStore.getState();
const pastSteps = () => useAppStore.temporal.getState().pastStates.length;

beforeEach(() => state().newPlan());

describe('the history', () => {
  it('takes back and takes again one detector', () => {
    const id = state().addDetector([1000, 2000]);
    expect(selectLevel(state()).detectors.map(({ at }) => at)).toEqual([[1000, 2000]]);
    state().undo();
    expect(selectLevel(state()).detectors).toEqual([]);
    expect(state().selection).toEqual([]);
    state().redo();
    expect(selectLevel(state()).detectors.map((each) => each.id)).toEqual([id]);
  });

  it('holds nothing of pan, zoom, selection, tool or what is carried', () => {
    const id = state().addDetector([1000, 2000]);
    const before = pastSteps();
    state().select([id]);
    state().zoomBy(2);
    state().setTool({ kind: 'wall' });
    state().setDraggedDetector({ id, at: [0, 0], base: 762, byTouch: false });
    state().setPreviewPlan({ ...state().plan, title: 'never set down' });
    expect(pastSteps()).toBe(before);
  });

  it('counts a gesture as one step, however many previews it showed', () => {
    const before = pastSteps();
    for (const title of ['a', 'b', 'c']) state().setPreviewPlan({ ...state().plan, title });
    const { previewPlan } = state();
    state().run((plan) => previewPlan ?? plan);
    expect(pastSteps()).toBe(before + 1);
    expect(state().previewPlan).toBeNull();
    state().undo();
    expect(state().plan.title).toBe('');
  });

  it('begins afresh with another plan', () => {
    state().addDetector([0, 0]);
    state().openPlan({ ...state().plan, title: 'Another' });
    expect(pastSteps()).toBe(0);
  });

  it('brings the level into view that the step changed', () => {
    const first = selectLevel(state()).id;
    state().addDetector([0, 0]);
    state().addLevel();
    expect(selectLevel(state()).id).not.toBe(first);
    state().undo();
    state().undo();
    expect(selectLevel(state()).id).toBe(first);
  });
});

describe('walls that are drawn one after another', () => {
  const corner = (x: number, y: number) => state().setChain(withCorner(state().chain, [x, y]));

  it('give and take corners by a step back and again, and no step of history', () => {
    const before = pastSteps();
    corner(0, 0);
    corner(4000, 0);
    corner(4000, 3000);
    state().undo();
    expect(state().chain.corners).toEqual([
      [0, 0],
      [4000, 0],
    ]);
    state().undo();
    state().redo();
    state().redo();
    expect(state().chain.corners).toHaveLength(3);
    expect(pastSteps()).toBe(before);
    expect(selectLevel(state()).walls).toEqual([]);
  });

  it('go on from where a step back left them: what was taken back is gone', () => {
    corner(0, 0);
    corner(4000, 0);
    state().undo();
    corner(0, 3000);
    state().redo();
    expect(state().chain.corners).toEqual([
      [0, 0],
      [0, 3000],
    ]);
  });

  it('are kept as one step where another level comes into view', () => {
    const first = selectLevel(state()).id;
    state().addLevel();
    state().setLevel(first);
    const before = pastSteps();
    corner(0, 0);
    corner(4000, 0);
    corner(4000, 3000);
    state().setLevel(state().plan.levels[1]?.id ?? '');
    expect(state().chain.corners).toEqual([]);
    expect(state().plan.levels[0]?.walls.map(({ from, to }) => [from, to])).toEqual([
      // The corners are those of the inside faces, 4 in from the center-lines.
      [
        [0, -101.6],
        [4101.6, -101.6],
      ],
      [
        [4101.6, -101.6],
        [4101.6, 3000],
      ],
    ]);
    expect(pastSteps()).toBe(before + 1);
  });
});

describe('a detector that is carried', () => {
  it('takes its companion along: the one that stays is evaluated by where the other is now', () => {
    state().openPlan(JSON.parse(readFileSync('samples/01-plain-basement.plan.json', 'utf8')) as Plan);
    const [first, second] = selectLevel(state()).detectors;
    if (!first || !second) throw new Error('the sample has a pair');
    expect(selectReports(state()).map(({ verdict }) => verdict)).toEqual(['clear', 'clear']);
    state().setDraggedDetector({
      id: first.id,
      at: [first.at[0] - 1500, first.at[1]],
      base: first.base,
      byTouch: false,
    });
    const other = selectReports(state()).find(({ id }) => id === second.id);
    expect(other?.verdict).toBe('blocked');
    expect(other?.checks.find(({ rule }) => rule === 'companion')?.measured).toBeGreaterThan(1400);
  });

  it('is evaluated where it is, and stays where it was in the plan', () => {
    const id = state().addDetector([1000, 2000]);
    const atRest = selectReports(state());
    state().setDraggedDetector({ id, at: [500, 600], base: 762, byTouch: false });
    expect(selectDragged(state())?.at).toEqual([500, 600]);
    // The same object for the same state, or React would draw for ever.
    expect(selectDragged(state())).toBe(selectDragged(state()));
    expect(selectLevel(state()).detectors[0]?.at).toEqual([1000, 2000]);
    expect(selectReports(state())).not.toBe(atRest);
    expect(selectReports(state())).toBe(selectReports(state()));
    state().setDraggedDetector(null);
    expect(selectReports(state())).toBe(atRest);
  });
});

describe('editing what is selected', () => {
  it('deletes, duplicates and nudges', () => {
    const id = state().addDetector([1000, 2000]);
    duplicateSelection();
    const [copy] = state().selection;
    expect(copy).not.toBe(id);
    expect(selectLevel(state()).detectors).toHaveLength(2);
    state().nudge(25.4, 0);
    expect(selectLevel(state()).detectors.map(({ at }) => at[0])).toEqual([1000, 1000 + 304.8 + 25.4]);
    state().deleteSelection();
    expect(selectLevel(state()).detectors.map((each) => each.id)).toEqual([id]);
  });

  it('turns selected ids over one by one', () => {
    state().select(['a', 'b']);
    state().select(['b', 'c'], 'toggle');
    expect(state().selection).toEqual(['a', 'c']);
  });
});

describe('the white of a level', () => {
  it('is nowhere on a level that is not the one to test, whatever the distances', () => {
    const plan = JSON.parse(readFileSync('samples/02-split-level.plan.json', 'utf8')) as Plan;
    state().openPlan(plan);
    const white = () => selectRegion(state()).rooms.reduce((sum, { area }) => sum + area, 0);
    // In a sale the lowest level that could be lived in is tested: the lower one, not the main one above it.
    state().setLevel('L1');
    expect([selectLevelBar(state()), white() > 0, isNothingAllowed(state())]).toEqual(['', true, false]);
    state().setLevel('L2');
    expect([selectLevelBar(state()) !== '', white(), isNothingAllowed(state())]).toEqual([true, 0, true]);
  });
});

describe('a detector', () => {
  it('has a label that no detector of another level has', () => {
    state().openPlan({
      ...emptyPlan(),
      levels: [emptyLevel('L1'), { ...emptyLevel('L2'), order: 1 }],
    });
    state().addDetector([0, 0]);
    state().setLevel('L2');
    state().addDetector([0, 0]);
    expect(state().plan.levels.flatMap(({ detectors }) => detectors.map(({ label }) => label))).toEqual(['A1', 'A2']);
  });

  it('says that its results and its entries in the log go with it', () => {
    state().openPlan(emptyPlan());
    const [bare, read] = [state().addDetector([0, 0]), state().addDetector([500, 0])];
    state().run((plan) => ({ ...plan, readings: [{ detector: read, value: 3, unit: 'pCi/L' }] }));
    state().say('');
    state().select([bare]);
    state().deleteSelection();
    expect(state().message).toBe('');
    state().select([read]);
    state().deleteSelection();
    expect(state().plan.readings).toEqual([]);
    expect(state().message).toMatch(/^Its results and its entries in the log went with it\. Undo /);
  });
});
