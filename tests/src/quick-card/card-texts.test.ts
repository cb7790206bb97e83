import { describe, expect, it } from 'vitest';
import { emptyPlan } from '../../../geometry/planfile/empty.ts';
import { conditionTexts } from '../../../src/protocol/conditions/condition-texts.ts';
import { CONDITION_ITEMS } from '../../../src/protocol/conditions/conditions-report.ts';
import { type CardAnswers, withAnswers } from '../../../src/quick-card/answers.ts';
import { drawCardPage } from '../../../src/quick-card/card-page.ts';
import { cardSections, openSentence } from '../../../src/quick-card/card-texts.ts';
import { describeCard } from '../../../src/quick-card/describe-card.ts';
import { withLooked } from '../../../src/quick-card/look-points.ts';
import { quickPlan } from '../../../src/quick-card/make-plan.ts';
import { ANSWERED, NOW } from './answered.ts';

const cardOf = (answers: Partial<CardAnswers>) =>
  describeCard(quickPlan(emptyPlan(), { ...ANSWERED, ...answers }, NOW));
const card = cardOf({});

describe('cardSections(card)', () => {
  it('has every sentence for the people in the house, closed, on or off, whatever its group is called', () => {
    const items = cardSections(card).flatMap((section) => section.items);
    const asked = CONDITION_ITEMS.filter(({ onlyWith }) => !onlyWith)
      .map((item) => conditionTexts(item).notice)
      .filter(Boolean);
    expect(asked.length).toBeGreaterThan(8);
    expect(items).toEqual(expect.arrayContaining(asked));
  });
});

describe('openSentence(spot)', () => {
  const sentenceOf = ({ spot }: typeof card) => spot && openSentence(spot);

  it('says how much is open, and the first of it by name', () => {
    expect(sentenceOf(card)).toBe('Not a clear result: 1 point is still open: direct sun.');
    expect(sentenceOf(cardOf({ none: [], things: [], support: null }))).toBe(
      'Not a clear result: 8 points are still open: exterior doors and windows, moving air, heat and 5 more.',
    );
    const few = cardOf({ none: ['moving-air', 'sump', 'floor-drain'] });
    expect(sentenceOf(few)).toBe('Not a clear result: 2 points are still open: direct sun and washer and dryer.');
  });

  it('is nothing where nothing is open', () => {
    const { plan, level, spot } = card;
    const [sun] = spot?.open ?? [];
    const looked = sun && describeCard(withLooked(plan, level.id, sun, NOW));
    expect(looked?.spot?.tone).toBe('clear');
    expect(looked && sentenceOf(looked)).toBeNull();
  });

  it('stands on the printed card above everything else', () => {
    const bare = cardOf({ none: [], things: [] });
    const svg = drawCardPage(bare, { paper: 'letter', date: '2026-11-28' });
    const texts = [...svg.matchAll(/>([^<>]+)</g)].map(([, text]) => text?.trim() ?? '').filter(Boolean);
    const at = (start: string) => texts.findIndex((text) => text.startsWith(start));
    expect(at('Not a clear result: 7 points are still open')).toBeGreaterThan(-1);
    expect(at('Not a clear result: 7 points are still open')).toBeLessThan(at('Put it here'));
  });
});

describe('what is open', () => {
  it('names direct sun where nobody has answered about windows', () => {
    const { spot } = cardOf({ none: [], things: [] });
    const sun = spot?.open.find(({ rule }) => rule === 'direct-sun');
    expect(sun?.words).toBe('Direct sun: not checked. Nobody has looked for windows. Keep out of direct sun.');
    expect(sun?.says).toBe('I looked: no direct sun reaches the spot');
  });

  it('no longer does so once a person has looked at the spot', () => {
    const { plan, level, spot } = cardOf({ none: [], things: [] });
    const sun = spot?.points.find(({ rule }) => rule === 'direct-sun');
    const looked = sun && describeCard(withLooked(plan, level.id, sun, NOW));
    expect(looked?.spot?.open.map(({ rule }) => rule)).not.toContain('direct-sun');
  });

  it('never stands beside "Clear": not for washers either, of which a plan has no record', () => {
    const { plan, level, spot } = cardOf({ none: ['moving-air', 'sump', 'floor-drain'] });
    const sun = spot?.open.find(({ rule }) => rule === 'direct-sun');
    const looked = sun && describeCard(withLooked(plan, level.id, sun, NOW));
    expect(looked?.spot?.open.map(({ rule }) => rule)).toEqual(['washer-dryer']);
    expect(looked?.spot).toMatchObject({ tone: 'clear-of-drawn', headline: 'Clear of what is drawn' });
  });

  it('says what a press records, and what was recorded', () => {
    const { plan, level, spot } = cardOf({ none: [] });
    const heat = spot?.points.find(({ rule }) => rule === 'sump');
    expect(heat?.says).toBe('I looked on this whole floor: no sump pit');
    const looked = heat && describeCard(withLooked(plan, level.id, heat, NOW));
    expect(looked?.spot?.points.find(({ rule }) => rule === 'sump')?.words).toBe(
      'Sump pit: none on this floor. You have looked.',
    );
  });
});

describe('hours of a leaflet that no test can meet', () => {
  it.each([
    [96, 48, /at least 96 hours and at most 48 hours/],
    [24, 36, /With at most 36 hours no test/],
    [null, 36, /With at most 36 hours no test/],
  ])('at least %s and at most %s give no spot, but say why', (minimumHours, maximumHours, why) => {
    const made = cardOf({ leaflet: { ...ANSWERED.leaflet, minimumHours, maximumHours } });
    expect(made.plan.levels.flatMap(({ detectors }) => detectors)).toEqual([]);
    expect(made.spot).toBeNull();
    expect(made.noSpot?.why).toMatch(why);
    // Also a plan that an earlier card made, or that was changed since.
    const kept = withAnswers(card.plan, made.answers);
    expect(describeCard(kept)).toMatchObject({ spot: null, noSpot: { why: expect.stringMatching(why) } });
  });
});

describe('what is done with the kit after the pick-up', () => {
  const sent = (labDays: number | null) => {
    const { leaflet } = ANSWERED;
    const items = cardSections(cardOf({ leaflet: { ...leaflet, labDays } })).at(-1)?.items ?? [];
    return items.find((text) => /laboratory/.test(text));
  };

  // The period of each laboratory begins at the pick-up: 402-R-92-004 2.4, from memory.
  it.each([
    [null, 'Mail it the same day. Look up in the leaflet by when the laboratory must have it.'],
    [0, 'The leaflet leaves no day for the mail: take it to the laboratory at once.'],
    [0.5, 'The leaflet leaves no day for the mail: take it to the laboratory at once.'],
    [1, 'Mail it the same day. The laboratory must have it within 1 day of the pick-up.'],
    [5, 'Mail it the same day. The laboratory must have it within 5 days of the pick-up.'],
  ])('with %s days to the laboratory', (labDays, words) => {
    expect(sent(labDays)).toBe(words);
  });
});

describe('what to measure', () => {
  // 32 Ill. Adm. Code 422.130(a)(1)(D), 25 Pa. Code 240.310(a)(1): 3 ft, and out of the direct flow of air.
  it('asks to keep out of the airflow of vents and fans', () => {
    const near = cardOf({ things: [{ kind: 'vent', square: '0,0' }] });
    expect(near.spot?.measure).toContain('at least 3 ft from every vent and fan, and out of their airflow');
  });
});
