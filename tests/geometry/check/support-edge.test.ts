import { describe, expect, it } from 'vitest';
import { checkDetector } from '../../../geometry/check/check-detector.ts';
import { buildLevel } from '../../../geometry/level/build-level.ts';
import { detectorAt, drawn, loop, planOf, rectangle, turned } from '../../helpers/drawn.ts';

/**
 * A table of 1200 × 600 at (4000, 3000), its top 2 mm above the base of the detector: it supports the detector where the
 * whole footprint is on it.
 */
function onTable(turn: number, inside: number) {
  const table = { box: { center: [4000, 3000] as const, width: 1200, depth: 600, turn } };
  const [x, y] = turned(turn)([600 - inside, 40]);
  const detector = detectorAt([4000 + x, 3000 + y]);
  const level = drawn(loop('h', rectangle(0, 0, 8000, 6000)), {
    rooms: [{ id: 'r', name: '', use: 'family-room', at: [1000, 1000] }],
    objects: [{ id: 't', name: 'Table', shape: table, bottom: 0, top: detector.base + 2 }],
    detectors: [detector],
  });
  const { checks } = checkDetector(planOf(level), buildLevel(level), detector, []);
  return { object: checks.find(({ subject }) => subject === 't')?.verdict ?? 'clear', support: supportOf(checks) };
}

const supportOf = (checks: ReturnType<typeof checkDetector>['checks']) =>
  checks.find(({ rule }) => rule === 'support')?.notRun;

/** A footprint of radius 50.8 mm that extends 0.1 mm past the edge meets the limit exactly (the limit tolerance). */
const LIMIT = 50.8 - 0.1;

describe('a spot at the limit of what carries it', () => {
  it.each(Array.from({ length: 90 }, (_, turn) => turn))('is on it, the table turned by %d degrees', (turn) => {
    expect(onTable(turn, LIMIT)).toEqual({ object: 'clear', support: false });
    expect(onTable(turn, LIMIT - 0.001)).toEqual({ object: 'blocked', support: true });
  });
});
