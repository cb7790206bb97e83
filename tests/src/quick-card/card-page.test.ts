import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { emptyPlan } from '../../../geometry/planfile/empty.ts';
import { cardPageSize, drawCardPage } from '../../../src/quick-card/card-page.ts';
import { describeCard } from '../../../src/quick-card/describe-card.ts';
import { quickPlan } from '../../../src/quick-card/make-plan.ts';
import { ANSWERED, NOW } from './answered.ts';
import { anyAnswers } from './any-answers.ts';

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

  it("is read at arm's length where everything is answered: type of 3 mm at least", () => {
    const svg = drawCardPage(describeCard(quickPlan(emptyPlan(), ANSWERED, NOW)), {
      paper: 'letter',
      date: '2026-11-28',
    });
    const [line] = svg.match(/<text[^>]*>Seal it at once, as the leaflet shows\.<\/text>/) ?? [''];
    expect(Number(/font-size="([\d.]+)"/.exec(line)?.[1])).toBeGreaterThanOrEqual(3);
  });
});
