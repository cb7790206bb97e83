import { beforeEach, describe, expect, it } from 'vitest';
import type { Level, Plan } from '../../../geometry/plan/model.ts';
import { emptyLevel, emptyPlan } from '../../../geometry/planfile/empty.ts';
import { setCompanion } from '../../../src/state/pairs.ts';
import { selectLevel, selectReports } from '../../../src/state/selectors.ts';
import { gapWords, withDetectors } from '../../../src/state/side-by-side.ts';
import { useAppStore } from '../../../src/state/store.ts';
import { detectorAt, loop, rectangle } from '../../helpers/drawn.ts';

function denPlan(profile = 'home-short-term', detectors: Level['detectors'] = [], side = 8000): Plan {
  const walls = loop('a', rectangle(-100, -100, side + 200, side + 200));
  const rooms = [{ id: 'r', name: 'Den', use: 'den', at: [5, 5] }] as const;
  const level: Level = { ...emptyLevel('L1'), walls, rooms, detectors };
  return { ...emptyPlan(), levels: [level], protocol: { profile, overrides: [] } };
}
const state = () => useAppStore.getState();
const marks = () => selectLevel(state()).detectors.map(({ pair }) => pair);
const verdicts = () => selectReports(state()).map(({ verdict }) => verdict);
const steps = () => useAppStore.temporal.getState().pastStates.length;

describe('setCompanion(detector, more)', () => {
  beforeEach(() => state().openPlan(denPlan('home-short-term', [detectorAt([4000, 4000], { label: 'A1' })])));

  it('sets the second one 5 in away, in one step of history', () => {
    expect(setCompanion('d1')).toBe('');
    const [first, second] = selectLevel(state()).detectors;
    const [ax, ay] = first?.at ?? [0, 0];
    const [bx, by] = second?.at ?? [0, 0];
    // 2 in and 2 in of rim, and 5 in between them: an inch more than 4 in, with a tape that may be off by an inch.
    expect(Math.hypot(ax - bx, ay - by)).toBeCloseTo(228.6, 6);
    expect([marks(), verdicts(), steps()]).toEqual([['A', 'A'], ['clear', 'clear'], 1]);
    expect(state().selection).toEqual([second?.id]);
    state().undo();
    expect(marks()).toEqual([null]);
  });

  it('sets two more in a triangle with it, three under one mark', () => {
    expect(setCompanion('d1', 2)).toBe('');
    expect([marks(), verdicts()]).toEqual([
      ['A', 'A', 'A'],
      ['clear', 'clear', 'clear'],
    ]);
  });

  it('sets the second one where its verdict is best when none passes, and that says why', () => {
    // By a corner, 4 in from both walls: no place within 8 in of it keeps a foot away from them.
    state().openPlan(denPlan('home-short-term', [detectorAt([150, 150])], 700));
    expect(setCompanion('d1')).toBe('');
    expect([marks(), verdicts()]).toEqual([
      ['A', 'A'],
      ['blocked', 'blocked'],
    ]);
  });

  it('says so where more find no place', () => {
    state().openPlan(denPlan('home-short-term', [detectorAt([150, 150])], 700));
    expect(setCompanion('d1', 2)).toBe('2 more find no place beside this one. Move it, or place fewer.');
    expect(state().message).toBe('2 more find no place beside this one. Move it, or place fewer.');
    expect(marks()).toEqual([null]);
  });
});

describe('withDetectors(plan, level, setting, first)', () => {
  const axes = [0, 1, 2, 3, 4].map((k) => [k * 1000, 0] as const);
  const size = { base: 762, radius: 50.8, tall: 25.4 };
  const marksOf = (count: number, mutual: boolean, first = false) => {
    const one = detectorAt([0, 0], { id: 'd1', label: 'A1' });
    const plan = denPlan('home-short-term', first ? [one] : []);
    const setting = { ...size, axes: axes.slice(0, count), mutual };
    const grown = withDetectors(plan, 'L1', setting, first ? one : null).plan;
    return grown.levels[0]?.detectors.map(({ pair }) => pair);
  };

  it('leaves a single one single, and marks those that all keep the gap alike', () => {
    expect(marksOf(1, true)).toEqual([null]);
    expect(marksOf(3, true)).toEqual(['A', 'A', 'A']);
    expect(marksOf(2, true, true)).toEqual(['A', 'A', 'A']);
  });

  it('marks a row two by two, an odd last one not at all', () => {
    expect(marksOf(4, false)).toEqual(['A', 'A', 'B', 'B']);
    expect(marksOf(5, false)).toEqual(['A', 'A', 'B', 'B', null]);
    expect(marksOf(3, false, true)).toEqual(['A', 'A', 'B', 'B']);
  });

  it('gives each an id and a label of its own', () => {
    const { added } = withDetectors(denPlan(), 'L1', { ...size, axes, mutual: false }, null);
    expect(new Set(added.map(({ id }) => id)).size).toBe(5);
    expect(added.map(({ label }) => label)).toEqual(['A1', 'A2', 'A3', 'A4', 'A5']);
  });

  it('keeps the mark of one whose companion is missing', () => {
    const one = detectorAt([0, 0], { pair: 'K' });
    const plan = denPlan('home-short-term', [one]);
    const { plan: grown } = withDetectors(plan, 'L1', { ...size, axes: axes.slice(1, 2), mutual: true }, one);
    expect(grown.levels[0]?.detectors.map(({ pair }) => pair)).toEqual(['K', 'K']);
  });
});

describe('gapWords(plan)', () => {
  it.each([
    // What every published list with a gap allows, Illinois with it.
    ['home-short-term', '4 in to 5 in from rim to rim.'],
    // 422.130(c)(2): 4 to 5 in.
    ['illinois-422-130', '4 in to 5 in from rim to rim.'],
    [
      'ohio-3701-69-07',
      '4 in to 5 in from rim to rim, as other protocols require: the protocol of this plan has no distance for a pair.',
    ],
  ])('of %s', (profile, words) => expect(gapWords(denPlan(profile))).toBe(words));
});
