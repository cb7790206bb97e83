import { describe, expect, it } from 'vitest';
import { checkDetector } from '../../../geometry/check/check-detector.ts';
import { buildLevel } from '../../../geometry/level/build-level.ts';
import type { Fixture, Opening, XY } from '../../../geometry/plan/model.ts';
import { emptyPlan } from '../../../geometry/planfile/empty.ts';
import { airRoute } from '../../../src/advice/air-route.ts';
import { detectorAt } from '../../helpers/drawn.ts';
import { hall } from '../../helpers/hall.ts';

/** A hall of 20 m by 20 m, divided at x = 0 by a wall 200 thick, with a register at its left and whatever openings. */
function way(at: XY, openings: readonly Opening[], register: Partial<Fixture> = {}) {
  const base = hall({ openings: [] });
  const level = {
    ...base,
    walls: [...base.walls, { id: 'm', from: [0, -10100], to: [0, 10100], thickness: 200, side: 'auto' } as const],
    openings,
    fixtures: [
      {
        id: 'f',
        kind: 'supply-register',
        name: '',
        shape: { circle: { center: [-3100, -4000], radius: 1 } },
        bottom: 0,
        top: 0,
        stream: null,
        ...register,
      } as Fixture,
    ],
  };
  const plan = { ...emptyPlan(), levels: [level] };
  const model = buildLevel(level);
  const detector = detectorAt(at);
  const check = checkDetector(plan, model, detector).checks.find(({ rule }) => rule === 'moving-air');
  return check && airRoute(plan, model, detector, check);
}
/** From y = 0 to y = 1000 in the middle wall. */
const DOOR: Opening = { id: 'o', wall: 'm', kind: 'door', offset: 10100, width: 1000, bottom: 0, top: 2000 };

describe('airWay(plan, model, detector, check)', () => {
  it('goes round the jamb: 3-4-5, the wall through, 3-4-5, less the rim; to the inch', () => {
    const found = way([3100, -4000], [DOOR]);
    // 5000 + 200 + 5000 − 50.8 mm is 33 ft 3.6 in.
    expect(found?.words).toBe(
      'Around the walls it is 33 ft 4 in; the rule measures in a straight line. Doors are counted as open.',
    );
    expect(found?.points).toHaveLength(4);
  });

  it('says so where no wall stands between', () => {
    expect(way([-3100, 4000], [DOOR])?.words).toBe(
      'There is no wall between: the air takes the straight line that the rule measures.',
    );
  });

  it('says so where no way leads, and draws none', () => {
    expect(way([3100, -4000], [])).toEqual({
      points: null,
      words: 'Around the walls no door or passage leads there. The rule measures in a straight line.',
    });
  });
});
