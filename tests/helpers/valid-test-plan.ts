import type { Detector, Level, Plan } from '../../geometry/plan/model.ts';
import type { Reading, Visit } from '../../geometry/plan/test-record.ts';
import { emptyPlan } from '../../geometry/planfile/empty.ts';
import { CONDITION_ITEMS } from '../../src/protocol/conditions/conditions-report.ts';

/** All rules whose subjects a person can report as looked for and absent. */
export const EVERYTHING = ['outside-opening', 'moving-air', 'heat', 'sump', 'floor-drain', 'direct-sun'] as const;

/** Places of a collocated pair in the middle of the room, mm: 4 1/2 in from rim to rim, which every published text allows. */
const MIDDLE = [
  [4000, 3000],
  [4000 + 101.6 + 114.3, 3000],
] as const;

export function pairAt(level: string, mark: string, base = 762): readonly Detector[] {
  return MIDDLE.map((at, i) => ({
    id: `${level}d${i + 1}`,
    label: `${mark}${i + 1}`,
    at,
    base,
    radius: 50.8,
    tall: 25.4,
    pair: mark,
    support: 'stand' as const,
  }));
}

/** Returns a level with one room of 26 ft by 20 ft, walls of 8 in, everything looked for and absent, and a pair in the middle. */
export function houseLevel(id = 'L1', mark = 'A', change: Partial<Level> = {}): Level {
  const [level] = emptyPlan().levels;
  const corners = [
    [0, 0],
    [8000, 0],
    [8000, 6000],
    [0, 6000],
  ] as const;
  return {
    ...(level as Level),
    id,
    name: id === 'L1' ? 'Basement' : `Level ${id}`,
    living: 'lived-in',
    ground: 'basement',
    walls: corners.map((from, i) => ({
      id: `${id}w${i + 1}`,
      from,
      to: corners[(i + 1) % 4] ?? from,
      thickness: 203.2,
      side: 'auto',
    })),
    rooms: [{ id: `${id}r1`, name: 'Family room', use: 'family-room', at: [1000, 1000] }],
    detectors: pairAt(id, mark),
    lookedFor: EVERYTHING,
    ...change,
  };
}

/** 62 h of exposure; closed-building conditions began a day before. The clocks went forward on 8 March 2026. */
export const GOOD_VISIT: Visit = {
  closedSince: '2026-03-06T18:00:00-05:00',
  mitigationOnSince: null,
  start: '2026-03-07T18:00:00-05:00',
  end: '2026-03-10T09:00:00-04:00',
};

/** Returns a result for each detector, pCi/L, in the order of the levels. */
const results = (levels: readonly Level[], values: readonly number[]): readonly Reading[] =>
  levels
    .flatMap(({ detectors }) => detectors)
    .flatMap(({ id }, i) => {
      const value = values[i];
      return value === undefined ? [] : [{ detector: id, value, unit: 'pCi/L' as const }];
    });

/** Returns a plan of a valid test: drawn, placed, with times, checklist answers from after the pick-up, and results. */
export function validTestPlan(values: readonly number[] = [1, 1.1], change: Partial<Plan> = {}): Plan {
  const base = emptyPlan();
  const levels = change.levels ?? [houseLevel()];
  return {
    ...base,
    title: 'Invented house',
    site: { ...base.site, timeZone: 'America/New_York' },
    visit: GOOD_VISIT,
    conditions: CONDITION_ITEMS.map(({ id }) => ({ item: id, state: 'kept' as const, at: null, note: '' })),
    levels,
    readings: results(levels, values),
    ...change,
  };
}
