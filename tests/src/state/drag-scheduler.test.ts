import { expect, it } from 'vitest';
import { createDragScheduler } from '../../../src/state/drag-scheduler.ts';

/** A scheduler by a clock that goes on only where a test says so. */
function manualClock() {
  let now = 1000;
  const pass = (ms: number) => {
    now += ms;
  };
  return { scheduler: createDragScheduler(() => now), pass };
}

it('never defers cheap work', () => {
  const { scheduler, pass } = manualClock();
  scheduler.run('region', () => 1);
  scheduler.run('reports', () => 1);
  for (let frame = 0; frame < 6; frame++) {
    pass(16);
    expect(scheduler.mayRun('reports', 1)).toBe(true);
    expect(scheduler.mayRun('region', 1)).toBe(true);
  }
  expect(scheduler.takeDeferred()).toBe(false);
});

it('runs one of two heavy pieces in each frame, in turn, and defers the other', () => {
  const { scheduler, pass } = manualClock();
  scheduler.run('region', () => pass(3));
  scheduler.run('reports', () => pass(3));
  const done: string[] = [];
  for (let frame = 0; frame < 6; frame++) {
    pass(16);
    for (const kind of ['reports', 'region'] as const) {
      if (!scheduler.mayRun(kind, 1)) continue;
      scheduler.run(kind, () => pass(3));
      done.push(`${frame} ${kind}`);
    }
    expect(scheduler.takeDeferred()).toBe(true);
    expect(scheduler.takeDeferred()).toBe(false);
  }
  expect(done.map((one) => one.split(' ')[0])).toEqual(['0', '1', '2', '3', '4', '5']);
  expect(new Set(done.map((one) => one.split(' ')[1])).size).toBe(2);
  expect(done.every((one, i) => i === 0 || one.split(' ')[1] !== done[i - 1]?.split(' ')[1])).toBe(true);
});

it('runs heavy work that nothing competes with in every frame', () => {
  const { scheduler, pass } = manualClock();
  scheduler.run('region', () => pass(3));
  pass(1000);
  const may = [0, 16, 16, 16].map((ms) => {
    pass(ms);
    return scheduler.mayRun('region', 1);
  });
  expect(may).toEqual([true, true, true, true]);
});

it('lets heavy work wait a few frames where many items are dragged, and then runs it', () => {
  const { scheduler, pass } = manualClock();
  scheduler.run('region', () => pass(3));
  const may = [1, 16, 16, 16].map((ms) => {
    pass(ms);
    return scheduler.mayRun('region', 40);
  });
  expect(may).toEqual([false, false, false, false]);
  expect(scheduler.takeDeferred()).toBe(true);
  pass(1000);
  expect(scheduler.mayRun('region', 40)).toBe(true);
});

it('returns what the work returns', () => {
  expect(manualClock().scheduler.run('reports', () => 'result')).toBe('result');
});
