import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { emptyPlan } from '../../../geometry/planfile/empty.ts';
import { cardPageSize, drawCardPage } from '../../../src/quick-card/card-page.ts';
import { describeCard } from '../../../src/quick-card/describe-card.ts';
import { quickPlan } from '../../../src/quick-card/make-plan.ts';
import { anyAnswers } from './any-answers.ts';

const NOW = Date.parse('2026-11-28T16:00:00-05:00');

describe('the page of a card', () => {
  it('fits on one upright page whatever was answered, with what is open and the cautions on it', () => {
    fc.assert(
      fc.property(anyAnswers, fc.constantFrom('letter' as const, 'a4' as const), (answers, paper) => {
        const card = describeCard(quickPlan(emptyPlan(), answers, NOW));
        const svg = drawCardPage(card, { paper, date: '2026-11-28' });
        const { width, height } = cardPageSize(paper);
        expect(svg).toContain(`width="${width}mm" height="${height}mm"`);
        expect(height).toBeGreaterThan(width);
        expect(svg).toContain('licensed');
        if (card.spot && card.spot.open.length > 0) expect(svg).toContain('not a clear result');
        if (!card.spot) expect(svg).toContain('No spot yet');
      }),
      { numRuns: 30 },
    );
  });
});
