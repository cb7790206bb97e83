import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import type { Plan } from '../../../../geometry/plan/model.ts';
import { parsePlan } from '../../../../geometry/planfile/parse.ts';
import { countsOf, planChanges } from '../../../../src/storage/library/changes.ts';

const read = parsePlan(readFileSync('samples/01-plain-basement.plan.json', 'utf8'));
if (!read.ok) throw new Error('the sample is no plan');
const { plan } = read;
const [level] = plan.levels;
if (!level) throw new Error('the sample has no level');
const edited = (change: Partial<typeof level>): Plan => ({ ...plan, levels: [{ ...level, ...change }] });

describe('what is different between two states of a plan', () => {
  it.each([
    ['nothing', plan, []],
    ['a new title', { ...plan, title: 'Another' }, ['title changed']],
    ['a detector less', edited({ detectors: level.detectors.slice(1) }), ['1 detector removed']],
    ['no object left', edited({ objects: [] }), [`${level.objects.length} pieces of furniture removed`]],
    [
      'a wall moved',
      edited({ walls: level.walls.map((wall, i) => (i === 0 ? { ...wall, thickness: 99 } : wall)) }),
      ['1 wall changed'],
    ],
    ['a higher ceiling', edited({ ceiling: 2500 }), ['the level itself changed']],
    [
      'an earlier test',
      { ...plan, earlier: [{ at: null, value: 3, unit: 'pCi/L', term: 'short-term', note: '' }] } as Plan,
      ['earlier tests changed'],
    ],
    ['another tolerance', { ...plan, tapeTolerance: 50 }, ["tape's tolerance changed"]],
  ])('%s', (_, after, words) => {
    expect(planChanges(plan, after)).toEqual(words);
  });

  it('finds every section that is not there any more', () => {
    const full = parsePlan(readFileSync('samples/06-sale-report.plan.json', 'utf8'));
    if (!full.ok) throw new Error('the sample is no plan');
    const optional = ['log', 'report', 'agreement', 'weather', 'practice', 'quality', 'earlier'] as const;
    const present = optional.filter((key) => full.plan[key] !== undefined);
    expect(present).toContain('log');
    for (const key of optional) {
      const { [key]: section, ...without } = full.plan;
      expect(planChanges(full.plan, without as Plan), key).toHaveLength(section === undefined ? 0 : 1);
    }
  });

  it('notices what no section of ours holds', () => {
    expect(planChanges(plan, { ...plan, county: 'form 7' } as Plan)).toEqual(['other entries of the file changed']);
    const swapped = edited({ walls: [...level.walls].reverse() });
    expect(planChanges(plan, swapped)).toEqual(['other entries of the file changed']);
  });

  it('says the other way round what was added', () => {
    expect(planChanges(edited({ detectors: level.detectors.slice(1) }), plan)).toEqual(['1 detector added']);
  });

  it('counts what lies on the plan', () => {
    expect(countsOf(plan)).toBe('1 level, 5 walls, 2 rooms, 2 detectors');
  });
});
