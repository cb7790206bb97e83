import { afterAll, beforeAll, expect, it, vi } from 'vitest';
import { mayWork, takeOwed, timedWork } from '../../../src/state/turns.ts';

// The clock goes on only where a test says so: on a busy machine any work may take long by the real one.
beforeAll(() => {
  vi.useFakeTimers({ toFake: ['performance'] });
});
afterAll(() => {
  vi.useRealTimers();
});

/** Takes so long, ms, by the clock. */
const dear = (ms: number) => {
  vi.advanceTimersByTime(ms);
};

it('cheap work never waits', () => {
  timedWork('region', () => 1);
  timedWork('reports', () => 1);
  for (let now = 1000; now < 1100; now += 16) {
    expect(mayWork('reports', 1, now)).toBe(true);
    expect(mayWork('region', 1, now)).toBe(true);
  }
  expect(takeOwed()).toBe(false);
});

it('of two dear pieces each frame does one, in turn, and owes the other', () => {
  timedWork('region', () => dear(3));
  timedWork('reports', () => dear(3));
  const done: string[] = [];
  for (let frame = 0; frame < 6; frame++) {
    dear(16);
    for (const kind of ['reports', 'region'] as const) {
      if (!mayWork(kind, 1)) continue;
      timedWork(kind, () => dear(3));
      done.push(`${frame} ${kind}`);
    }
    expect(takeOwed()).toBe(true);
    expect(takeOwed()).toBe(false);
  }
  expect(done.map((one) => one.split(' ')[0])).toEqual(['0', '1', '2', '3', '4', '5']);
  expect(new Set(done.map((one) => one.split(' ')[1])).size).toBe(2);
  expect(done.every((one, i) => i === 0 || one.split(' ')[1] !== done[i - 1]?.split(' ')[1])).toBe(true);
});

it('dear work that nobody competes with is done in every frame', () => {
  timedWork('region', () => dear(3));
  const now = performance.now() + 1000;
  expect([0, 16, 32, 48].map((later) => mayWork('region', 1, now + later))).toEqual([true, true, true, true]);
});

it('with many things in hand dear work waits a few frames, is owed meanwhile, and then done', () => {
  timedWork('region', () => dear(3));
  const done = performance.now();
  takeOwed();
  expect([1, 17, 33, 50].map((later) => mayWork('region', 40, done + later))).toEqual([false, false, false, false]);
  expect(takeOwed()).toBe(true);
  expect(mayWork('region', 40, done + 1000)).toBe(true);
});
