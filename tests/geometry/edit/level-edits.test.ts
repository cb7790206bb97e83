import { describe, expect, it } from 'vitest';
import {
  checkedLevelEdit,
  type EditResult,
  withLevel,
  withNewLevel,
  withoutLevel,
  withPlan,
  withSite,
} from '../../../geometry/edit/index.ts';
import { emptyLevel } from '../../../geometry/planfile/empty.ts';
import { done, level, levelOf, plan, reasonOf } from './room-plan.ts';

describe('the edits of levels and sections', () => {
  it('change a level, add one, take one away with its readings', () => {
    expect(levelOf(done(withLevel(plan, 'L1', { ceiling: 2400 })))).toEqual({ ...level, ceiling: 2400 });
    const two = done(withNewLevel(plan, emptyLevel('L2')));
    expect(two.levels.map(({ id }) => id)).toEqual(['L1', 'L2']);
    expect(two.levels[0]).toBe(level);
    expect(withoutLevel(two, 'L1')).toEqual({ ...two, levels: [emptyLevel('L2')], readings: [] });
    expect(done(checkedLevelEdit(plan, 'L1', (same) => same))).toBe(plan);
  });

  it('change the site and the sections', () => {
    expect(done(withSite(plan, { north: 15 })).site).toEqual({ ...plan.site, north: 15 });
    expect(done(withPlan(plan, { title: 'Alder Court' }))).toEqual({ ...plan, title: 'Alder Court' });
  });

  it.each<[string, EditResult, string]>([
    [
      'a ceiling on the floor',
      withLevel(plan, 'L1', { ceiling: 0 }),
      'The level: "ceiling" is 0, needs a number of mm, more than 0, at most 100000.',
    ],
    ['two levels of one id', withNewLevel(plan, emptyLevel('L1')), 'The id "L1" belongs to something else already.'],
    [
      'a latitude',
      withSite(plan, { latitude: 95 }),
      'The site: "latitude" is 95, needs a number of degrees, -90 to 90, or null.',
    ],
    [
      'a time zone',
      withSite(plan, { timeZone: 'Nowhere' }),
      'The site has the time zone "Nowhere", which is not known here. Write one like America/New_York.',
    ],
    [
      'an end before the start',
      withPlan(plan, { visit: { ...plan.visit, start: '2026-03-07T18:00:00Z', end: '2026-03-07T17:00:00Z' } }),
      'The visit ends at 2026-03-07T17:00:00Z, not after its start at 2026-03-07T18:00:00Z. Check both and their offsets.',
    ],
    [
      'a looser rule without a note',
      withPlan(plan, { protocol: { ...plan.protocol, overrides: [{ rule: 'sump', distance: 1828.8, note: '' }] } }),
      'An override loosens the rule "sump" from 7 ft to 6 ft without a note. Enter why in the note.',
    ],
    [
      'a profile',
      withPlan(plan, { protocol: { profile: 'moon', overrides: [] } }),
      'The protocol has the profile "moon", which this Stillspot does not know.',
    ],
    [
      'a kit',
      withPlan(plan, { kit: { ...plan.kit, minimumHours: 97 } }),
      "The kit may stay for at most 96 hours and must stay for at least 97. Check the kit's instructions.",
    ],
    [
      'a condition at no time',
      withPlan(plan, { conditions: [{ item: 'windows-closed', state: 'kept', at: '2026-02-30T00:00:00Z', note: '' }] }),
      'A condition has "at" as "2026-02-30T00:00:00Z", which names a day that the calendar does not have.',
    ],
    [
      'a reading of no detector',
      withPlan(plan, { readings: [{ detector: 'd9', value: 1, unit: 'pCi/L' }] }),
      'A reading belongs to the detector "d9", which is not in the plan.',
    ],
    [
      'a detector lost with its reading left', // no edit does this, but a function passed in can
      checkedLevelEdit(plan, 'L1', (each) => ({ ...each, detectors: each.detectors.slice(1) })),
      'A reading belongs to the detector "d1", which is not in the plan.',
    ],
  ])('refuse %s', (_, result, reason) => {
    expect(reasonOf(result)).toBe(reason);
  });
});
