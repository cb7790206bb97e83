import { describe, expect, it } from 'vitest';
import { checkDetector } from '../../../geometry/check/check-detector.ts';
import { buildLevel } from '../../../geometry/level/build-level.ts';
import type { Level } from '../../../geometry/plan/model.ts';
import { hall, hallDetector, planUnder, RADIUS } from '../../helpers/hall.ts';

const report = (level: Level, change: Parameters<typeof hallDetector>[0]) =>
  checkDetector(planUnder('home-short-term', [level]), buildLevel(level), hallDetector(change));

describe('a report', () => {
  it('names the same one of two equally near things, whatever the order of the file', () => {
    const level = hall({ openings: [] });
    const turned = { ...level, walls: [...level.walls].reverse() };
    // In the middle of a square hall all four walls are 10 m away.
    const named = (one: Level) =>
      report(one, { at: [0, 0] }).checks.find(({ rule }) => rule === 'outside-wall')?.subject;
    expect([named(level), named(turned)]).toEqual(['w0', 'w0']);
  });

  it('is blocked where the rim reaches into a wall, also in a room whose use is not known', () => {
    const level = hall({ rooms: [] });
    expect(report(level, { at: [10000 - RADIUS + 1, 0] }).verdict).toBe('blocked');
    expect(report(level, { at: [0, 0] }).verdict).toBe('unknown');
  });

  it('draws the line to the piece of a wall that lies nearest, where the rim covers two', () => {
    // A stub from the east splits the west half of the dividing wall into pieces at y = 0.
    const base = hall({ openings: [] });
    const level: Level = {
      ...base,
      walls: [
        ...base.walls,
        { id: 'm', from: [0, -10100], to: [0, 10100], thickness: 200, side: 'auto' },
        { id: 's', from: [0, 0], to: [4000, 0], thickness: 100, side: 'auto' },
      ],
    };
    const below = report(level, { at: [-100 - RADIUS + 20, 10] }).checks.find(({ subject }) => subject === 'm');
    expect(below?.witness?.subject).toEqual([-100, 10]);
  });
});
