import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { PlanSummary } from '../../../../src/storage/library/records.ts';
import { findIn, groupPlans, ORDERS, type Order } from '../../../../src/storage/library/search.ts';

const NOW = new Date(2026, 10, 25, 12, 0).getTime();
const DAY = 86_400_000;
const summary = (given: Partial<PlanSummary> = {}): PlanSummary => ({
  id: 'p',
  title: 'Finch Lane, basement',
  place: '12 Finch Lane, the Odell household',
  createdAt: NOW,
  changedAt: NOW,
  hash: '',
  roomNames: ['Family room', 'Büro'],
  detectorLabels: ['A1', 'A2'],
  levels: 1,
  start: null,
  end: null,
  binnedAt: null,
  versionAt: 0,
  readable: true,
  ...given,
});

describe('looking for a plan', () => {
  it.each([
    ['', ''],
    ['finch', ''],
    ['BASEMENT odell', ''],
    ['family', 'Family room'],
    ['buro', 'Büro'],
    ['a2', 'detector A2'],
    ['finch a1 fam', 'detector A1, Family room'],
    ['  lane,  ', ''],
  ])('"%s" finds it by %s', (looked, where) => {
    expect(findIn(summary(), looked)).toEqual({ found: true, where });
  });

  it.each(['inch', 'mill', 'finch mill', 'a3'])('"%s" does not find it', (looked) => {
    expect(findIn(summary(), looked)).toEqual({ found: false });
  });

  it('by the beginning of any word of its title finds it, whatever the word', () => {
    fc.assert(
      fc.property(
        fc.array(fc.stringMatching(/^[a-zà-ž]{1,8}$/u), { minLength: 1 }),
        fc.nat(),
        fc.nat(),
        (words, at, cut) => {
          const word = words[at % words.length] ?? '';
          const beginning = word.slice(0, 1 + (cut % word.length));
          expect(findIn(summary({ title: words.join(' ') }), beginning).found).toBe(true);
        },
      ),
    );
  });
});

describe('the groups', () => {
  it('hold every plan once, in every order', () => {
    const day = fc.integer({ min: -400, max: 400 }).map((days) => NOW + days * DAY);
    const instant = fc.option(day.map((at) => new Date(at).toISOString()));
    const summaries = fc.array(
      fc.record({ changedAt: day, start: instant, end: instant, place: fc.constantFrom('', 'A', 'B') }),
    );
    fc.assert(
      fc.property(summaries, fc.constantFrom(...(Object.keys(ORDERS) as Order[])), (some, order) => {
        const all = some.map((each, index) => summary({ ...each, id: `p${index}` }));
        const shown = groupPlans(all, order, NOW).flatMap((group) => group.summaries.map(({ id }) => id));
        expect([...shown].sort()).toEqual(all.map(({ id }) => id).sort());
      }),
    );
  });

  it('by next due: what measures now before what is to come, the nearest date first', () => {
    const at = (days: number) => new Date(NOW + days * DAY).toISOString();
    const summaries = [
      summary({ id: 'none' }),
      summary({ id: 'over', start: at(-9), end: at(-6) }),
      summary({ id: 'soon', start: at(1), end: at(4) }),
      summary({ id: 'later', start: at(-1), end: at(2) }),
      summary({ id: 'first', start: at(-2), end: at(1) }),
    ];
    const groups = groupPlans(summaries, 'due', NOW).map(({ title, summaries: some }) => [
      title,
      some.map(({ id }) => id),
    ]);
    expect(groups).toEqual([
      ['Measuring now', ['first', 'later']],
      ['To be started', ['soon']],
      ['No date yet', ['none']],
      ['Measured', ['over']],
    ]);
  });

  it('by next due, as the kit has it: the overdue first, and what is on its way to the laboratory by its limit', () => {
    const at = (days: number) => new Date(NOW + days * DAY).toISOString();
    const visit = {
      zone: 'America/New_York',
      kit: { minimumHours: 48, maximumHours: 96, labDays: 5 },
      posted: null,
      received: null,
      monitor: false,
      read: false,
    };
    const summaries = [
      summary({ id: 'sent late', start: at(-9), end: at(-6), visit }),
      summary({ id: 'sent', start: at(-4), end: at(-1), visit }),
      summary({ id: 'read', start: at(-9), end: at(-6), visit: { ...visit, read: true } }),
      // Until 96 h after the start.
      summary({ id: 'second', start: at(-1), end: null, visit }),
      summary({ id: 'first', start: at(-2), end: null, visit }),
      summary({ id: 'over', start: at(-5), end: null, visit }),
      summary({
        id: 'long kit',
        start: at(-5),
        end: null,
        visit: { ...visit, kit: { ...visit.kit, maximumHours: 168 } },
      }),
    ];
    const groups = groupPlans(summaries, 'due', NOW).map(({ title, summaries: some }) => [
      title,
      some.map(({ id }) => id),
    ]);
    expect(groups).toEqual([
      ['Overdue', ['over']],
      ['Measuring now', ['first', 'long kit', 'second']],
      ['To the laboratory', ['sent late', 'sent']],
      ['Measured', ['read']],
    ]);
  });

  it('by house: each house once, those without an address last', () => {
    const summaries = [
      summary({ place: '', id: 'a' }),
      summary({ place: '9 B Street', id: 'b' }),
      summary({ place: '10 A Street', id: 'c' }),
    ];
    expect(groupPlans(summaries, 'house', NOW).map(({ title }) => title)).toEqual([
      '9 B Street',
      '10 A Street',
      'No address yet',
    ]);
  });
});
