import { describe, expect, it } from 'vitest';
import { detectorSubject, objectSubjects, supportedDepth } from '../../../geometry/check/subjects.ts';
import type { PlanObject } from '../../../geometry/plan/model.ts';
import { effectiveRules } from '../../../geometry/rules/profiles.ts';
import type { RuleId } from '../../../geometry/rules/types.ts';
import { hallDetector } from '../../helpers/hall.ts';

const rules = effectiveRules({ profile: 'home-short-term', overrides: [] });
function ruleOf(id: RuleId) {
  const rule = rules.find((each) => each.id === id);
  if (!rule) throw new Error(`The profile has no rule ${id}.`);
  return rule;
}

it('the box around a detector as an obstacle holds its whole disc', () => {
  const { body } = detectorSubject(hallDetector({ at: [1000, 2000], radius: 60 }));
  expect(body.extent).toEqual({ minX: 940, minY: 1940, maxX: 1060, maxY: 2060 });
});

describe('supportedDepth', () => {
  const table: PlanObject = {
    id: 't',
    name: 'Table',
    shape: { box: { center: [2000, 2000], width: 800, depth: 800, turn: 0 } },
    bottom: 0,
    top: 760,
  };
  const [subject] = objectSubjects([table]);
  const depthFor = (rule: RuleId, base: number) => {
    if (!subject) throw new Error('The hall has no table.');
    return supportedDepth(ruleOf(rule), subject, { base, radius: 50, tall: 25 });
  };

  it('is the radius less the tolerance where the top is up to 3 mm above the base', () => {
    expect(depthFor('object', 758)).toBe(49.9);
    expect(depthFor('object', 756)).toBeNull();
  });

  it('is none where the top is not above the base: nothing is to be excepted', () => {
    expect(depthFor('object', 760)).toBeNull();
    expect(depthFor('object', 762)).toBeNull();
  });

  it('is none for a rule that measures in plan: what carries a detector is as near as anything', () => {
    expect(depthFor('sump', 758)).toBeNull();
  });
});
