import { describe, expect, it } from 'vitest';
import { checkDetector } from '../../../geometry/check/check-detector.ts';
import { buildLevel } from '../../../geometry/level/build-level.ts';
import type { Detector, Level, PlanObject } from '../../../geometry/plan/model.ts';
import { carriedTogether, carriersBelow, setOnto } from '../../../src/advice/onto-furniture.ts';
import { hall, hallDetector, planUnder } from '../../helpers/hall.ts';

const [x, y] = hallDetector().at;
const table: PlanObject = {
  id: 't1',
  name: 'Table',
  shape: { box: { center: [x, y], width: 1500, depth: 900, turn: 0 } },
  bottom: 0,
  top: 736.6,
};
const one: Detector = { ...hallDetector(), id: 'd1', pair: 'A', base: 762 };
const other: Detector = { ...one, id: 'd2', at: [x + 228.6, y] };
const levelWith = (detectors: Detector[], objects: PlanObject[] = [table]): Level => ({
  ...hall({ objects }),
  detectors,
});

const supportOf = (level: Level, id: string) => {
  const detector = level.detectors.find((each) => each.id === id) as Detector;
  const { checks } = checkDetector(planUnder('home-short-term', [level]), buildLevel(level), detector);
  return checks.find(({ rule }) => rule === 'support');
};

// The contract of the plan file: an object carries a detector if its top is within 3 mm of the base, under the whole foot.
describe('a detector set on the furniture under it', () => {
  it('is offered what would carry its whole foot, and nothing that carries it already', () => {
    const level = levelWith([one]);
    expect(carriersBelow(level, one)).toEqual([table]);
    expect(carriersBelow(level, { ...one, base: table.top })).toEqual([]);
    const overTheEdge = { ...one, at: [x + 750, y] as const };
    expect(carriersBelow(level, overTheEdge)).toEqual([]);
    expect(carriersBelow(levelWith([one], [{ ...table, top: 0 }]), one)).toEqual([]);
  });

  it('takes the others of its pair along if the same piece would carry them', () => {
    expect(carriedTogether(levelWith([one, other]), one, table)).toEqual(['d1', 'd2']);
    expect(carriedTogether(levelWith([one, { ...other, pair: 'B' }]), one, table)).toEqual(['d1']);
    expect(carriedTogether(levelWith([one, { ...other, at: [x + 2000, y] }]), one, table)).toEqual(['d1']);
  });

  it('is carried by it afterward, also where it was said to hang', () => {
    const level = levelWith([{ ...one, support: 'hung' }, other]);
    const [after] = setOnto(planUnder('home-short-term', [level]), ['d1', 'd2'], table).levels;
    for (const id of ['d1', 'd2'])
      expect(supportOf(after as Level, id)).toMatchObject({ verdict: 'clear', subject: 't1' });
    expect(after?.detectors[0]).toMatchObject({ base: 736.6, support: null });
  });
});
