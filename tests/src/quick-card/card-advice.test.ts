import { describe, expect, it } from 'vitest';
import type { Plan } from '../../../geometry/plan/model.ts';
import type { Visit } from '../../../geometry/plan/test-record.ts';
import { emptyPlan } from '../../../geometry/planfile/empty.ts';
import type { CardAnswers } from '../../../src/quick-card/answers.ts';
import { drawCardPage } from '../../../src/quick-card/card-page.ts';
import { cardSections, openSentence, placeFacts, timeFacts, twoKits } from '../../../src/quick-card/card-texts.ts';
import { describeCard, type QuickCard } from '../../../src/quick-card/describe-card.ts';
import { quickPlan } from '../../../src/quick-card/make-plan.ts';
import { ANSWERED, FOOT, NOW } from './answered.ts';

const base: Plan = { ...emptyPlan(), site: { ...emptyPlan().site, timeZone: 'America/New_York' } };
const planOf = (answers: Partial<CardAnswers>) => quickPlan(base, { ...ANSWERED, ...answers }, NOW);
const cardOf = (answers: Partial<CardAnswers>) => describeCard(planOf(answers));
const hours = (minimumHours: number, maximumHours: number) => ({
  leaflet: { ...ANSWERED.leaflet, minimumHours, maximumHours },
});
const plain = (text: string) => text.replaceAll('\u00a0', ' ');
const facts = (card: QuickCard) => timeFacts(card.times).map(({ name, text }) => plain(`${name}: ${text}`));
const visited = (visit: Partial<Visit>): QuickCard => {
  const plan = planOf({});
  const { startPlanned: _, ...others } = plan.visit;
  return describeCard({ ...plan, visit: { ...others, ...visit } });
};
const texts = (card: QuickCard) => cardSections(card).flatMap(({ items }) => items.map(plain));

describe('the times of a card', () => {
  it('before the placement say what to count where it is placed at another minute', () => {
    expect(facts(cardOf({}))).toEqual([
      'Close the house: Saturday, November 28, 8:00 pm, or earlier',
      'Place it: Sunday, November 29, 8:00 am, not earlier',
      'Pick it up: from Tuesday, December 1, 8:00 am to Thursday, December 3, 8:00 am',
      'Last moment: Thursday, December 3, 8:00 am. After that the test is invalid.',
      'Placed later than that: Count from the minute when you placed it: pick it up after 48 to 96 hours.',
    ]);
  });

  it('before the placement no longer ask to close a house that is closed by the record', () => {
    const plan = planOf({});
    const closed = (closedSince: string) =>
      facts(describeCard({ ...plan, visit: { ...plan.visit, closedSince } })).slice(0, 2);
    expect(closed('2026-11-28T19:40:00-05:00')).toEqual([
      'House closed since: Saturday, November 28, 7:40 pm',
      'Place it: Sunday, November 29, 8:00 am',
    ]);
    expect(closed('2026-11-28T23:00:00-05:00')[0]).toBe(
      'House closed since: Saturday, November 28, 11:00 pm. It had to be by Saturday, November 28, 8:00 pm.',
    );
  });

  it('tell of a house that was opened again until when it was closed', () => {
    const opened = { closedSince: '2026-11-28T19:40:00-05:00', closedUntil: '2026-11-29T07:00:00-05:00' };
    const plan = planOf({});
    expect(facts(describeCard({ ...plan, visit: { ...plan.visit, ...opened } }))[0]).toMatch(/^Close the house: /);
    expect(facts(visited({ ...opened, start: '2026-11-29T08:15:00-05:00' }))[0]).toBe(
      'House closed: from Saturday, November 28, 7:40 pm to Sunday, November 29, 7:00 am',
    );
  });

  it('name one minute where the leaflet leaves one', () => {
    expect(facts(cardOf(hours(72, 72)))).toEqual(
      expect.arrayContaining([
        'Pick it up: at Wednesday, December 2, 8:00 am, to the minute',
        'Placed later than that: Count from the minute when you placed it: pick it up after exactly 72 hours.',
      ]),
    );
  });

  it('after the placement tell what was written down, and no longer when to close and to place', () => {
    const visit = { closedSince: '2026-11-28T19:30:00-05:00', start: '2026-11-29T08:15:00-05:00' };
    expect(facts(visited(visit))).toEqual([
      'House closed since: Saturday, November 28, 7:30 pm',
      'Placed: Sunday, November 29, 8:15 am',
      'Pick it up: from Tuesday, December 1, 8:15 am to Thursday, December 3, 8:15 am',
      'Last moment: Thursday, December 3, 8:15 am. After that the test is invalid.',
    ]);
    expect(facts(visited({ ...visit, closedSince: null }))[0]).toBe(
      'House closed since: Not recorded. It had to be by Saturday, November 28, 8:15 pm.',
    );
    expect(facts(visited({ ...visit, closedSince: '2026-11-28T23:00:00-05:00' }))[0]).toBe(
      'House closed since: Saturday, November 28, 11:00 pm. It had to be by Saturday, November 28, 8:15 pm.',
    );
  });

  it('after the pick-up tell how long it was exposed, and by when the laboratory must have it', () => {
    const visit = {
      closedSince: '2026-11-28T19:30:00-05:00',
      start: '2026-11-29T08:15:00-05:00',
      end: '2026-12-01T09:00:00-05:00',
    };
    const card = visited(visit);
    expect(facts(card)).toEqual([
      'House closed since: Saturday, November 28, 7:30 pm',
      'Placed: Sunday, November 29, 8:15 am',
      'Picked up: Tuesday, December 1, 9:00 am',
      'Exposed: 48 h 45 min. Allowed: 48 to 96 hours.',
    ]);
    expect(texts(card)).toContain('Mail it the same day. The laboratory must have it by Sunday, December 6, 9:00 am.');
    expect(facts(visited({ ...visit, end: '2026-12-01T08:00:00-05:00' })).at(-1)).toBe(
      'Exposed: 47 h 45 min. That is outside the 48 to 96 hours that a test may take: it is invalid.',
    );
  });
});

describe('two kits', () => {
  it('are told how far apart they stand', () => {
    const { spot } = cardOf({ kits: 2 });
    expect(plain(spot ? (placeFacts(spot)[0]?.text ?? '') : '')).toMatch(
      / to the middle between the two\. Side by side, 4 in to 5 in from rim to rim\. Set (?:them|one) [^.]+\.$/,
    );
  });

  it('are recommended with a spot for one kit alone', () => {
    expect(twoKits(cardOf({}))).toMatch(/^Better: two kits/);
    expect(twoKits(cardOf({ kits: 2 }))).toBeNull();
    expect(twoKits(cardOf({ use: 'kitchen' }))).toBeNull();
  });
});

describe('the weather', () => {
  // 32 Ill. Adm. Code 422.130(b)(1)(D): no test of less than 96 h in a severe storm or in sustained wind of 30 mph.
  const forecast = /forecast.* less than 96 h in a severe storm or in sustained wind of 30 mph/;

  it('is looked up before a test that may take less than 96 h', () => {
    expect(texts(cardOf({}))).toContainEqual(expect.stringMatching(forecast));
    expect(texts(cardOf(hours(96, 168)))).not.toContainEqual(expect.stringMatching(forecast));
  });
});

describe('a long-term kit', () => {
  it.each([
    [2160, 8760],
    [2184, 2200],
  ])('of %s to %s h has no card: nobody keeps a house closed for a year', (least, most) => {
    // Closed-building conditions hold for tests of up to 90 days: ANSI/AARST MALB-2014 (1/2021), 4.1(b).
    const card = cardOf(hours(least, most));
    expect(card.spot).toBeNull();
    expect(card.plan.visit.start).toBeNull();
    expect(card.noSpot?.why).toBe(`A kit that is exposed for up to ${most} hours is for a long-term test.`);
    expect(card.noSpot?.helps[0]).toMatch(/^This card is for a short test with the house closed, of at most 90 days/);
  });

  it('begins beyond 90 days', () => {
    expect(cardOf(hours(48, 2160)).spot).not.toBeNull();
  });
});

describe('a room that takes more than one place', () => {
  const big = { across: 160 * FOOT, along: 20 * FOOT };

  it('is told beside the verdict, on the screen and on paper', () => {
    // 32 Ill. Adm. Code 422.130(a)(1)(C): one more location per 2,000 sq ft.
    const { spot } = cardOf(big);
    const sentence = spot && openSentence(spot);
    expect(sentence && plain(sentence)).toMatch(
      /^One place is not enough: a room of 3200 sq ft takes 2\. Check the two lengths of the room, or use the full app\. Not a clear result/,
    );
    const svg = drawCardPage(cardOf(big), { paper: 'letter', date: '2026-11-28' });
    expect(plain(svg)).toContain('One place is not enough');
    const small = cardOf({}).spot;
    expect(small && openSentence(small)).not.toMatch(/One place/);
  });
});

describe('a rule that the plan loosens', () => {
  it('is told beside the verdict, on the screen and on paper', () => {
    const plan = planOf({});
    const overrides = [{ rule: 'outside-wall', distance: 152.4, note: 'Dry wall' }];
    const card = describeCard({ ...plan, protocol: { ...plan.protocol, overrides } });
    const sentence = card.spot && openSentence(card.spot);
    expect(sentence && plain(sentence)).toMatch(
      /^Looser than published: exterior walls 6 in instead of 1 ft\. Not a clear/,
    );
    const svg = drawCardPage(card, { paper: 'letter', date: '2026-11-28' });
    expect(plain(svg)).toContain('Looser than published');
    expect(openSentence(cardOf({}).spot as never)).not.toContain('Looser');
  });
});
