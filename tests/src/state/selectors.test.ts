import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { uncheckedLevelEdit } from '../../../geometry/edit/level.ts';
import type { Plan } from '../../../geometry/plan/model.ts';
import type { AppState } from '../../../src/state/app-state.ts';
import {
  selectDragged,
  selectHoverChecks,
  selectLevel,
  selectModel,
  selectRegion,
  selectReports,
} from '../../../src/state/selectors.ts';
import { shownRegion, shownReports, takeDeferred } from '../../../src/state/shown-results.ts';
import { useAppStore } from '../../../src/state/store.ts';
import { selectWhyNotWords } from '../../../src/state/why-not.ts';
import { validTestPlan } from '../../helpers/valid-test-plan.ts';

const state = useAppStore.getState;
const CORNER = [0, 0] as const;

/** The plan with its first wall moved by `dx`, mm, as in a drag. */
function dragged(plan: Plan, dx: number): Plan {
  return uncheckedLevelEdit(plan, plan.levels[0]?.id ?? '', (level) => ({
    ...level,
    walls: level.walls.map((wall, index) =>
      index === 0 ? { ...wall, from: [wall.from[0] + dx, wall.from[1]], to: [wall.to[0] + dx, wall.to[1]] } : wall,
    ),
  }));
}

beforeEach(() => state().openPlan(validTestPlan([])));

describe('selectors', () => {
  const selectors: readonly ((state: AppState) => unknown)[] = [
    selectLevel,
    selectModel,
    selectRegion,
    selectReports,
    selectDragged,
    selectHoverChecks,
    (now) => selectWhyNotWords(now, now.hover?.at ?? CORNER),
  ];
  const [first] = validTestPlan([]).levels[0]?.detectors ?? [];
  const cases: readonly (readonly [string, () => void])[] = [
    ['at rest', () => undefined],
    ['with the pointer over the floor', () => state().setHover({ at: first?.at ?? [0, 0], id: null })],
    [
      'while a detector is dragged',
      () => state().setDraggedDetector({ id: first?.id ?? '', at: [500, 600], base: 762, byTouch: false }),
    ],
    ['while a wall is dragged', () => state().setPreviewPlan(dragged(state().plan, 100))],
  ];

  it.each(cases)('return the same object for the same state %s', (_, begin) => {
    begin();
    for (const select of selectors) expect(select(state())).toBe(select(state()));
  });

  it('return the exact result of each state, whichever was asked for before', () => {
    const [one, two] = [100, 200].map((dx): AppState => ({ ...state(), previewPlan: dragged(state().plan, dx) }));
    if (!one || !two) throw new Error('two states');
    const before = [selectRegion(one), selectReports(one)];
    expect(selectRegion(two)).not.toEqual(before[0]);
    expect([selectRegion(one), selectReports(one)]).toEqual(before);
  });
});

describe('what is shown while a wall is dragged', () => {
  let now = 5000;
  beforeEach(() => {
    vi.spyOn(performance, 'now').mockImplementation(() => now);
  });
  afterEach(() => {
    vi.restoreAllMocks();
  });
  /** Each reading of the clock costs 2 ms: all work is heavy then. */
  const slowly = () => vi.spyOn(performance, 'now').mockImplementation(() => (now += 2));

  it('is exact at rest', () => {
    expect(shownRegion(state())).toBe(selectRegion(state()));
    expect(shownReports(state())).toBe(selectReports(state()));
  });

  it('is exact where the frame has time', () => {
    shownRegion(state());
    shownReports(state());
    state().setPreviewPlan(dragged(state().plan, 100));
    expect(shownRegion(state())).toBe(selectRegion(state()));
    expect(shownReports(state())).toBe(selectReports(state()));
    expect(takeDeferred()).toBe(false);
  });

  it('is the region of the last frame that had time, and exact again at rest', () => {
    const settled = shownRegion(state());
    shownReports(state());
    slowly();
    // Both are heavy from here on.
    state().setPreviewPlan(dragged(state().plan, 100));
    shownRegion(state());
    shownReports(state());
    const shown: unknown[] = [];
    for (let step = 2; step < 8; step++) {
      state().setPreviewPlan(dragged(state().plan, step * 100));
      const exact = [shownRegion(state()) === selectRegion(state()), shownReports(state()) === selectReports(state())];
      shown.push(exact.filter(Boolean).length < 2 && takeDeferred());
    }
    expect(shown).toContain(true);
    state().setPreviewPlan(null);
    expect(shownRegion(state())).toEqual(settled);
    expect(shownReports(state())).toBe(selectReports(state()));
  });
});
