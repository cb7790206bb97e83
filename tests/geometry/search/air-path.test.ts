import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { buildLevel } from '../../../geometry/level/build-level.ts';
import type { Level, Opening, XY } from '../../../geometry/plan/model.ts';
import { airPath } from '../../../geometry/search/air-path.ts';
import { evenly } from '../../helpers/evenly.ts';
import { hall } from '../../helpers/hall.ts';

/** A hall of 20 m by 20 m, divided at x = 0 by a wall 200 thick with openings in it; the rooms are at ±100 mm and beyond. */
function divided(openings: Partial<Opening>[]): Level {
  const base = hall({ openings: [] });
  return {
    ...base,
    walls: [...base.walls, { id: 'm', from: [0, -10100], to: [0, 10100], thickness: 200, side: 'auto' }],
    openings: openings.map((change, k) => ({
      id: `o${k}`,
      wall: 'm',
      kind: 'door',
      offset: 10100,
      width: 1000,
      bottom: 0,
      top: 2000,
      ...change,
    })),
  };
}

const lengthOf = (level: Level, from: XY, to: XY) => airPath(buildLevel(level), from, to)?.length ?? null;

describe('airPath(model, from, to)', () => {
  it('is the straight line within a room', () => {
    expect(lengthOf(divided([]), [-4000, 0], [-1000, 4000])).toBeCloseTo(5000, 6); // 3-4-5
  });

  it('is null where no way leads through', () => {
    expect(lengthOf(divided([]), [-4000, 0], [4000, 0])).toBeNull();
  });

  it('does not pass a window', () => {
    expect(lengthOf(divided([{ kind: 'window' }]), [-4000, 0], [4000, 0])).toBeNull();
  });

  it('goes straight through a door that lies in the way (door from y = 0 to y = 1000)', () => {
    expect(lengthOf(divided([{}]), [-4000, 500], [4000, 500])).toBeCloseTo(8000, 6);
  });

  it('bends at both corners of a jamb: 3-4-5 to it, the wall through, 3-4-5 away from it', () => {
    // From (−3100, −4000) to the corner (−100, 0), 200 through the wall, from (100, 0) to (3100, −4000).
    expect(lengthOf(divided([{}]), [-3100, -4000], [3100, -4000])).toBeCloseTo(5000 + 200 + 5000, 6);
  });

  it('takes the nearer of two doors', () => {
    const far = divided([{ offset: 18000 }]);
    const both = divided([{ offset: 18000 }, {}]);
    expect(lengthOf(far, [-4000, 0], [4000, 0])).toBeGreaterThan(10000);
    expect(lengthOf(both, [-4000, 500], [4000, 500])).toBeCloseTo(8000, 6);
  });

  it('goes round the end of a stub wall: two legs of a 3-4-5 triangle and its flat end', () => {
    const base = hall({ openings: [] });
    // A stub from the south wall up to y = 0 at x = 0, 200 thick: its end corners are (±100, 0).
    const level = {
      ...base,
      walls: [...base.walls, { id: 's', from: [0, 10100], to: [0, 0], thickness: 200, side: 'auto' as const }],
    } as Level;
    expect(lengthOf(level, [-3100, 4000], [3100, 4000])).toBeCloseTo(5000 + 200 + 5000, 6);
  });

  it('starts at the wall face for a register set into the wall', () => {
    expect(lengthOf(divided([]), [-20, 0], [-4100, 0])).toBeCloseTo(4000, 6);
  });

  it('is never shorter than the straight line, the same both ways, and keeps the triangle inequality', () => {
    const model = buildLevel(divided([{}, { offset: 3000, kind: 'passage' }]));
    const point = fc.tuple(evenly(-9900, 9900), evenly(-9900, 9900));
    const inRoom = point.filter(([x]) => Math.abs(x) > 101);
    fc.assert(
      fc.property(inRoom, inRoom, inRoom, (a, b, c) => {
        const far = (p: XY, q: XY) => airPath(model, p, q)?.length ?? Number.NaN;
        expect(far(a, b)).toBeGreaterThanOrEqual(Math.hypot(a[0] - b[0], a[1] - b[1]) - 1e-6);
        expect(far(a, b)).toBeCloseTo(far(b, a), 5);
        expect(far(a, c)).toBeLessThanOrEqual(far(a, b) + far(b, c) + 1e-6);
      }),
      { numRuns: 60 },
    );
  });
});
