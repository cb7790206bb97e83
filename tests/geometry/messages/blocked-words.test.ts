import { describe, expect, it } from 'vitest';
import { blockingChecks } from '../../../geometry/check/blocking-checks.ts';
import { buildLevel } from '../../../geometry/level/build-level.ts';
import { describeBlocked } from '../../../geometry/messages/index.ts';
import type { Level, Plan, XY } from '../../../geometry/plan/model.ts';
import { emptyLevel, emptyPlan } from '../../../geometry/planfile/empty.ts';
import { levelRegion } from '../../../geometry/region/level-region.ts';

const wall = (id: string, from: XY, to: XY) => ({ id, from, to, thickness: 200, side: 'inside' }) as const;
/** Two rooms of 8 m by 6 m, inside walls on all sides; the left one has a sump pit of 18 in at its middle, at (4000, 3000). */
const level: Level = {
  ...emptyLevel('L1'),
  walls: [
    wall('w1', [0, 0], [16000, 0]),
    wall('w2', [16000, 0], [16000, 6000]),
    wall('w3', [16000, 6000], [0, 6000]),
    wall('w4', [0, 6000], [0, 0]),
    wall('w5', [8000, 0], [8000, 6000]),
  ],
  rooms: [{ id: 'r1', name: 'Den', use: 'den', at: [1000, 1000] }],
  fixtures: [
    {
      id: 'f1',
      kind: 'sump-pit',
      name: '',
      shape: { circle: { center: [4000, 3000], radius: 228.6 } },
      bottom: 0,
      top: 0,
      stream: null,
    },
  ],
};
const plan: Plan = { ...emptyPlan(), levels: [level] };
const model = buildLevel(level);
const probe = { base: 762, radius: 50.8, tall: 25.4 };
const region = levelRegion(plan, model, probe);
const told = (at: XY) => describeBlocked(blockingChecks(plan, model, probe, at), region, plan, model, at);

describe('describeBlocked', () => {
  it('names rule, subject, distance and need, and the way to the nearest allowed area', () => {
    // 1219.2 + 228.6 + 50.8 from the middle leaves 4 ft to the rim; 7 ft requires 3 ft more, toward the wall on the right.
    expect(told([4000 + 1219.2 + 228.6 + 50.8, 3000])).toEqual({
      head: 'Blocked: sump pit',
      lines: ['4 ft from the sump pit, needs 7 ft.', 'The nearest allowed area is 3 ft toward the east wall.'],
    });
  });

  it('what is not decided is told as unknown, with the room that has white', () => {
    const { head, lines } = told([12000, 3000]);
    expect(head).toMatch(/^Unknown: /);
    expect(lines[0]).toMatch(/no label/);
    expect(lines[1]).toMatch(/^The nearest allowed area is .*, into the den\.$/);
  });

  it('a white spot has no reason against it', () => {
    expect(told([800, 800])).toEqual({ head: '', lines: [expect.stringMatching(/^Allowed area: no rule that ran/)] });
  });

  it('off the floor it says what is missing', () => {
    expect(told([-500, 3000]).lines).toEqual(['No floor of a closed room is here. Close the walls around it first.']);
  });

  it('says so where nothing on the level is white', () => {
    const high = { ...probe, base: 100 };
    const { lines } = describeBlocked(
      blockingChecks(plan, model, high, [800, 800]),
      levelRegion(plan, model, high),
      plan,
      model,
      [800, 800],
    );
    expect(lines[1]).toBe('There is no allowed area on this level at this height.');
  });
});
