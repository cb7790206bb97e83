import { describe, expect, it } from 'vitest';
import { emptyPlan } from '../../../geometry/planfile/empty.ts';
import { CONDITION_ITEMS } from '../../../src/protocol/conditions/conditions-report.ts';
import { cardSections } from '../../../src/quick-card/card-texts.ts';
import { describeCard } from '../../../src/quick-card/describe-card.ts';
import { quickPlan } from '../../../src/quick-card/make-plan.ts';
import { ANSWERED, NOW } from './answered.ts';

const card = describeCard(quickPlan(emptyPlan(), ANSWERED, NOW));

describe('cardSections(card)', () => {
  it('has every sentence for the people in the house, closed, on or off, whatever its group is called', () => {
    const items = cardSections(card).flatMap((section) => section.items);
    const asked = CONDITION_ITEMS.filter(({ notice, onlyWith }) => notice && !onlyWith).map(({ notice }) => notice);
    expect(asked.length).toBeGreaterThan(8);
    expect(items).toEqual(expect.arrayContaining(asked));
  });
});
