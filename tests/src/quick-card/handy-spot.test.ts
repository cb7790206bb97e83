import { describe, expect, it } from 'vitest';
import { emptyPlan } from '../../../geometry/planfile/empty.ts';
import { parseLength } from '../../../geometry/units/index.ts';
import type { CardAnswers } from '../../../src/quick-card/answers.ts';
import { placeFacts } from '../../../src/quick-card/card-texts.ts';
import { describeCard } from '../../../src/quick-card/describe-card.ts';
import { quickPlan } from '../../../src/quick-card/make-plan.ts';
import { middleOf } from '../../../src/quick-card/spot.ts';
import { ANSWERED, NOW } from './answered.ts';

const INCH = 25.4;
const cardOf = (answers: Partial<CardAnswers>) =>
  describeCard(quickPlan(emptyPlan(), { ...ANSWERED, ...answers }, NOW));

describe('a spot with tape distances in whole inches or 5 cm', () => {
  it('has the whole foot of the kit on the shelf', () => {
    const { spot } = cardOf({
      across: 88.5 * INCH,
      along: 330 * INCH,
      inside: ['left', 'right', 'up', 'down'],
      things: [
        { kind: 'outside-door', square: '5,1' },
        { kind: 'washer', square: '-1,4' },
        { kind: 'fan', square: '-1,3' },
        { kind: 'drain', square: '1,4' },
      ],
      support: { kind: 'shelf', top: null, square: '4,-1' },
    });
    expect(spot?.open.map(({ rule }) => rule)).not.toContain('support');
  });

  it('is where the printed distances lead, to the step of the tape where whole ones are too near', () => {
    const [across, along] = [4530, 2063];
    const { spot } = cardOf({
      unit: 'metric',
      kits: 2,
      across,
      along,
      inside: ['left', 'up', 'down'],
      things: [
        { kind: 'washer', square: '3,-1' },
        { kind: 'vent', square: '0,-1' },
      ],
      support: { kind: 'table', top: null },
    });
    const [x, y] = middleOf((spot?.detectors ?? []).map(({ at }) => at));
    const measured = { left: x, right: across - x, up: y, down: along - y };
    expect(spot?.tapes).toHaveLength(2);
    for (const { side, length } of spot?.tapes ?? []) {
      const printed = parseLength(length, 'metric');
      expect(printed.ok && printed.mm).toBeCloseTo(measured[side], 3);
    }
  });
});

describe('two kits', () => {
  // Of each kit the distances are judged where it is: turned about their middle, one of them is up to 3 in nearer to a wall.
  it.each<readonly [string, Partial<CardAnswers>, string]>([
    [
      'on a shelf of the far wall',
      { support: { kind: 'shelf', top: 1200, square: '2,5' } },
      'in a line from left to right',
    ],
    ['on a shelf of the right wall', { support: { kind: 'shelf', top: 1200, square: '5,4' } }, 'one behind the other'],
  ])('are set in the direction that was judged: %s', (_, answers, words) => {
    const { spot } = cardOf({ kits: 2, things: [], ...answers });
    expect(spot && placeFacts(spot)[0]?.text).toContain(words);
  });

  it('are in line with the walls where that is as good', () => {
    const { spot } = cardOf({ kits: 2 });
    const [a, b] = (spot?.detectors ?? []).map(({ at }) => at);
    expect(a && b && Math.min(Math.abs(a[0] - b[0]), Math.abs(a[1] - b[1]))).toBeLessThan(0.001);
  });
});
