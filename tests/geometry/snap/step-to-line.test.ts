import { describe, expect, it } from 'vitest';
import { stepToLine } from '../../../geometry/snap/step-to-line.ts';

const WALL = [
  [100, 0],
  [100, 50],
] as const;

describe('a step', () => {
  it('ends where it leads with nothing in its way, and beside a line that it passes', () => {
    expect(stepToLine([0, 10], [80, 0], [WALL])).toEqual([80, 10]);
    expect(stepToLine([0, 60], [300, 0], [WALL])).toEqual([300, 60]);
    expect(stepToLine([0, 10], [80, 0], [])).toEqual([80, 10]);
  });

  it('ends on the first line that it crosses or comes to, also at its end', () => {
    const further = [
      [200, 0],
      [200, 50],
    ] as const;
    expect(stepToLine([0, 10], [300, 0], [further, WALL])).toEqual([100, 10]);
    expect(stepToLine([0, 10], [100, 0], [WALL])).toEqual([100, 10]);
    expect(stepToLine([0, 50], [300, 0], [WALL])).toEqual([100, 50]);
  });

  it('leaves the line that it starts on, and runs along one', () => {
    expect(stepToLine([100, 10], [300, 0], [WALL])).toEqual([400, 10]);
    expect(stepToLine([100, 10], [-300, 0], [WALL])).toEqual([-200, 10]);
    expect(stepToLine([100, 10], [0, 300], [WALL])).toEqual([100, 310]);
  });

  it('ends on a slanted line', () => {
    const slanted = [
      [0, 100],
      [100, 0],
    ] as const;
    const [x, y] = stepToLine([0, 40], [100, 0], [slanted]);
    expect([x, y]).toEqual([60, 40]);
  });
});
