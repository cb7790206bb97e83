import { afterEach, expect, it, vi } from 'vitest';
import { buildLevel } from '../../../geometry/level/build-level.ts';
import { levelRegion } from '../../../geometry/region/level-region.ts';
import { visibleEdges } from '../../../geometry/region/visible-edges.ts';
import { drawnEdges, isOutlined } from '../../../src/editor/drawing.ts';
import { useShown } from '../../../src/state/shown.ts';
import { benchPlan, onlyLevel, PROBE } from '../../bench/plans.ts';

afterEach(() => void vi.useRealTimers());

const regionOf = (size: 'large' | 'huge') => {
  const plan = benchPlan(size);
  return levelRegion(plan, buildLevel(onlyLevel(plan)), PROBE);
};

it('outlines the zones of a usual house at once', () => {
  const region = regionOf('large');
  expect(isOutlined(region)).toBe(true);
  expect(drawnEdges(region)).toEqual(visibleEdges(region.zones));
});

it('outlines those of 5,000 features in slices, tells when they are there, and leaves none out', () => {
  vi.useFakeTimers();
  const region = regionOf('huge');
  const told = vi.fn();
  const stop = useShown.subscribe(told);
  expect(drawnEdges(region).size).toBe(0);
  expect(isOutlined(region)).toBe(false);
  vi.runAllTimers();
  expect(told).toHaveBeenCalledOnce();
  expect(isOutlined(region)).toBe(true);
  expect(drawnEdges(region)).toEqual(visibleEdges(region.zones));
  stop();
});

it('leaves a drawing alone that another one has taken the place of', () => {
  vi.useFakeTimers();
  const [first, second] = [regionOf('huge'), regionOf('huge')];
  const told = vi.fn();
  const stop = useShown.subscribe(told);
  drawnEdges(first);
  drawnEdges(second);
  vi.runAllTimers();
  // Of the first nothing is told: it was given up.
  expect(told).toHaveBeenCalledOnce();
  expect(isOutlined(second)).toBe(true);
  expect(isOutlined(first)).toBe(false);
  stop();
});
