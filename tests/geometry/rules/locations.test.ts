import { describe, expect, it } from 'vitest';
import type { Level } from '../../../geometry/plan/model.ts';
import { testLocations } from '../../../geometry/search/locations.ts';
import { hall, hallDetector, planUnder } from '../../helpers/hall.ts';

const PROBE = { base: 900, radius: 50, tall: 25 };
const SQUARE_FOOT = 304.8 * 304.8;

/** Returns a square hall with this many square feet of floor. */
const hallOf = (squareFeet: number, change: Partial<Level> = {}) => hall(change, Math.sqrt(squareFeet * SQUARE_FOOT));

describe('testLocations: one location for each 2,000 sq ft (32 Ill. Adm. Code 422.130(a)(1)(C); Ohio App. A, A.1.c)', () => {
  it.each([
    { squareFeet: 400, needed: 1 },
    { squareFeet: 2000, needed: 1 },
    { squareFeet: 2001, needed: 2 },
    { squareFeet: 4000, needed: 2 },
    { squareFeet: 4001, needed: 3 },
  ])('$squareFeet sq ft: $needed', ({ squareFeet, needed }) => {
    const [level] = testLocations(planUnder('illinois-422-130', [hallOf(squareFeet)]), PROBE).levels;
    expect(level?.floorArea).toBeCloseTo(squareFeet * SQUARE_FOOT, -1);
    expect(level?.needed).toBe(needed);
  });

  it('Pennsylvania and Canada give no area: one location a level', () => {
    for (const profile of ['pennsylvania-240-310', 'health-canada-long-term']) {
      expect(testLocations(planUnder(profile, [hallOf(5000)]), PROBE).levels[0]?.needed).toBe(1);
    }
  });

  it('counts a pair as one location and says what is missing', () => {
    const detectors = [
      hallDetector({ id: 'a', pair: 'A' }),
      hallDetector({ id: 'b', pair: 'A', at: [250, 5000] }),
      hallDetector({ id: 'c', at: [-5000, 0] }),
    ];
    const [level] = testLocations(planUnder('ohio-3701-69-07', [hallOf(7000, { detectors })]), PROBE).levels;
    expect(level).toMatchObject({ needed: 4, placed: 2, missing: 2 });
  });
});

describe('which levels are tested', () => {
  const basement = (change: Partial<Level>) => hallOf(400, { id: 'B', name: 'Basement', order: 0, ...change });
  const slab = hallOf(400, { id: 'S', name: 'Slab room', order: 1, ground: 'slab', living: 'lived-in' });
  const upstairs = hallOf(400, { id: 'U', name: 'Upstairs', order: 2, ground: 'none', living: 'lived-in' });

  it('home-short-term, own household: the lowest that is lived in (MAH-2019 3.1.2)', () => {
    const plan = planUnder('home-short-term', [basement({ living: 'could-be' }), slab, upstairs]);
    expect(testLocations(plan, PROBE).levels.map(({ needed }) => needed)).toEqual([0, 1, 0]);
  });

  it('home-short-term, property transfer: the lowest that could be lived in (MAH-2019 3.1.1)', () => {
    const plan = planUnder('home-short-term', [basement({ living: 'could-be' }), slab, upstairs]);
    const sale = { ...plan, site: { ...plan.site, purpose: 'property-transfer' as const } };
    expect(testLocations(sale, PROBE).levels.map(({ needed }) => needed)).toEqual([1, 0, 0]);
  });

  it('Illinois, Ohio, Pennsylvania: every part that stands on the ground (422.130(a)(1), App. B; 240.310(a)(3))', () => {
    for (const profile of ['illinois-422-130', 'ohio-3701-69-07', 'pennsylvania-240-310']) {
      const plan = planUnder(profile, [basement({ living: 'could-be' }), slab, upstairs]);
      expect(testLocations(plan, PROBE).levels.map(({ needed }) => needed)).toEqual([1, 1, 0]);
    }
  });

  it('a level that nobody could live on needs none', () => {
    expect(testLocations(planUnder('illinois-422-130', [basement({ living: 'no' })]), PROBE).levels[0]).toMatchObject({
      needed: 0,
      bar: 'Nobody could live on this level.',
    });
  });

  it('names the rooms that can hold a detector, with the area for its axis: a hall less 1 ft and the rim all round', () => {
    const [level] = testLocations(planUnder('illinois-422-130', [hall({ openings: [] })]), PROBE).levels;
    // 20 m from face to face, minus 304.8 mm (0.1 mm of it tolerated) and the radius of 50 mm on either side.
    const side = 20000 - 2 * (304.8 - 0.1 + 50);
    expect(level?.rooms).toHaveLength(1);
    expect(level?.rooms[0]?.area).toBeCloseTo(side * side, 0);
  });
});
