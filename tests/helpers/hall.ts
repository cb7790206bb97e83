import type { Detector, Fixture, FixtureKind, Level, Plan } from '../../geometry/plan/model.ts';
import { emptyLevel, emptyPlan } from '../../geometry/planfile/empty.ts';

/** Radius of the detector of `hallDetector`, mm. */
export const RADIUS = 50;

/** Returns a square room around the origin, `side` mm between wall faces, walls 200 thick, with a window 1,000 wide in the north wall. */
export function hall(change: Partial<Level> = {}, side = 20000): Level {
  const c = side / 2 + 100;
  const corners = [
    [-c, -c],
    [c, -c],
    [c, c],
    [-c, c],
  ] as const;
  return {
    ...emptyLevel('L'),
    ceiling: 3000,
    walls: corners.map((from, i) => ({
      id: `w${i}`,
      from,
      to: corners[(i + 1) % 4] as (typeof corners)[number],
      thickness: 200,
      side: 'auto',
    })),
    openings: [{ id: 'o', wall: 'w0', kind: 'window', offset: c - 500, width: 1000, bottom: 1000, top: 2000 }],
    rooms: [{ id: 'r', name: '', use: 'den', at: [0, 0] }],
    ...change,
  };
}

export function hallDetector(change: Partial<Detector> = {}): Detector {
  return { id: 'd', label: '', at: [0, 5000], base: 900, radius: RADIUS, tall: 25, pair: null, ...change };
}

/** Returns a fixture with its edge at x = 0, the hall to its right. */
export function fixtureAt(kind: FixtureKind, change: Partial<Fixture> = {}): Fixture {
  const shape = { box: { center: [-100, 5000], width: 200, depth: 200, turn: 0 } } as const;
  return { id: 'f', kind, name: '', shape, bottom: 0, top: 100, stream: null, ...change };
}

/** Returns a plan of these levels under a profile without overrides. */
export function planUnder(profile: string, levels: readonly Level[], change: Partial<Plan> = {}): Plan {
  return { ...emptyPlan(), tapeTolerance: 25.4, protocol: { profile, overrides: [] }, levels, ...change };
}
