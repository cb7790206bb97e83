import { describe, expect, it } from 'vitest';
import type { Plan } from '../../../../geometry/plan/model.ts';
import type { VisitDocument } from '../../../../src/report/documents/draw-document.ts';
import { drawDocument } from '../../../../src/report/documents/draw-document.ts';
import { formatForOccupants, testTimes } from '../../../../src/report/documents/format-times.ts';
import { sheetTexts } from '../../../helpers/sheet-texts.ts';
import { timed } from './job-plans.ts';

/** Placed on Saturday, March 7, 2026 at 6:00 pm: closed by 6:00 am, a system on by 6:00 pm on Friday; two days pass a change of clocks. */
const at = (text: string) => Date.parse(text);
const TWO_DAYS_BEFORE = { date: '2026-03-05', now: at('2026-03-05T12:00:00-05:00') };
const SAME_MORNING = { date: '2026-03-07', now: at('2026-03-07T10:00:00-05:00') };
const JUST_PLACED = { date: '2026-03-07', now: at('2026-03-07T18:01:00-05:00') };
const WEEK_LATER = { date: '2026-03-14', now: at('2026-03-14T12:00:00-04:00') };
type Printing = { readonly date: string; readonly now?: number };

const visit = (change: Partial<Plan['visit']>, plan: Plan = timed): Plan => ({
  ...plan,
  visit: { ...plan.visit, ...change },
});
const mitigated: Plan = { ...timed, site: { ...timed.site, purpose: 'after-mitigation' } };

/** "name: time", or "name ____ what stands below the blank line". */
function rows(plan: Plan, printing: Printing): readonly string[] {
  return testTimes(plan, formatForOccupants, printing).map(({ name, at: time, otherwise }) =>
    (time === null ? `${name} ____ ${otherwise}` : `${name}: ${time}`).replaceAll('\u00a0', ' '),
  );
}

const printed = (which: VisitDocument, plan: Plan, printing: Printing = JUST_PLACED): string =>
  drawDocument(which, { plan, paper: 'letter', ...printing })
    .flatMap((svg) => sheetTexts(svg).map(({ text }) => text))
    .join(' ')
    .replaceAll('\u00a0', ' ');

describe('the times of the report', () => {
  it('hold since when the system ran, and when the house was opened again', () => {
    const after = {
      mitigationOnSince: '2026-03-05T09:00:00-05:00',
      end: '2026-03-10T09:00:00-04:00',
      closedUntil: '2026-03-12T10:00:00-04:00',
    };
    const recorded = visit(after, mitigated);
    expect(printed('report', recorded, WEEK_LATER)).toContain(
      'Mitigation system on since Thursday, March 5, 2026, 9:00 am',
    );
    expect(printed('report', recorded, WEEK_LATER)).toContain('House opened again Thursday, March 12, 2026, 10:00 am');
    expect(printed('report', mitigated)).toContain('Mitigation system on since MISSING');
    expect(printed('report', timed)).not.toMatch(/Mitigation system on since|House opened again/);
  });
});

describe('since when the house is closed', () => {
  const closed = (plan: Plan, printing: Printing) => rows(plan, printing)[0];
  const BLANK = 'House closed from ____ not recorded';

  it('recorded: it is printed as it is', () => {
    const known = visit({ closedSince: '2026-03-07T05:00:00-05:00' });
    expect(closed(known, JUST_PLACED)).toBe('House closed from: Saturday, March 7, 5:00 am');
    expect(closed(known, WEEK_LATER)).toBe('House closed from: Saturday, March 7, 5:00 am');
    expect(closed(known, TWO_DAYS_BEFORE)).toBe('Keep the house closed from: Saturday, March 7, 5:00 am');
  });

  it('planned: while the placement lies ahead it is asked for', () => {
    const asked = 'Keep the house closed from: Saturday, March 7, 6:00 am at the latest';
    expect(closed(timed, TWO_DAYS_BEFORE)).toBe(asked);
    expect(closed(timed, { date: '2026-03-06' })).toBe(asked);
    // The time to ask for has passed: 12 h before a later placement.
    const open = 'Keep the house closed from ____ at least 12 hours before the detectors are placed';
    expect(closed(timed, SAME_MORNING)).toBe(open);
    expect(closed(visit({ start: null }), SAME_MORNING)).toBe(open);
  });

  it('not known: once the detectors are placed a blank line, never a time that nobody recorded', () => {
    expect(closed(timed, JUST_PLACED)).toBe(BLANK);
    expect(closed(timed, WEEK_LATER)).toBe(BLANK);
    // Where only the day of printing is known, the placement of that day may have happened.
    expect(closed(timed, { date: '2026-03-07' })).toBe(BLANK);
    expect(closed(visit({ start: null, end: '2026-03-10T19:00:00-04:00' }), WEEK_LATER)).toBe(BLANK);
  });

  it.each<VisitDocument>(['notice', 'agreement', 'placement-card'])('the %s invents none either', (which) => {
    const text = drawDocument(which, { plan: timed, paper: 'letter', ...JUST_PLACED })
      .flatMap((svg) => sheetTexts(svg).map(({ text }) => text))
      .join(' ')
      .replaceAll('\u00a0', ' ');
    expect(text).toMatch(/Detectors placed Saturday, March 7,( 2026,)? 6:00 pm/);
    expect(text).not.toContain('6:00 am');
    expect(text).toContain('House closed from not recorded');
  });
});

describe('since when a mitigation system runs', () => {
  const system = (plan: Plan, printing: Printing) => rows(plan, printing)[0];

  it('recorded', () => {
    const known = visit({ mitigationOnSince: '2026-03-01T09:00:00-05:00' }, mitigated);
    expect(system(known, WEEK_LATER)).toBe('Mitigation system on from: Sunday, March 1, 9:00 am');
  });

  it('planned', () => {
    expect(system(mitigated, TWO_DAYS_BEFORE)).toBe(
      'Keep the mitigation system on from: Friday, March 6, 6:00 pm at the latest',
    );
    expect(system(mitigated, SAME_MORNING)).toBe(
      'Keep the mitigation system on from ____ at least 24 hours before the detectors are placed',
    );
  });

  it('not known', () => {
    expect(system(mitigated, JUST_PLACED)).toBe('Mitigation system on from ____ not recorded');
  });
});

describe('when the detectors are placed', () => {
  const placed = (plan: Plan, printing: Printing) => rows(plan, printing)[1];

  it('recorded, planned, not known', () => {
    expect(placed(timed, JUST_PLACED)).toBe('Detectors placed: Saturday, March 7, 6:00 pm');
    expect(placed(timed, TWO_DAYS_BEFORE)).toBe('Detectors to be placed: Saturday, March 7, 6:00 pm');
    expect(placed(visit({ start: null }), TWO_DAYS_BEFORE)).toBe('Detectors to be placed ____ not scheduled yet');
    const picked = visit({ start: null, end: '2026-03-10T19:00:00-04:00' });
    expect(placed(picked, WEEK_LATER)).toBe('Detectors placed ____ not recorded');
  });
});

describe('when the detectors are picked up', () => {
  const pickUp = (plan: Plan, printing: Printing) => rows(plan, printing)[2];

  it('recorded', () => {
    const known = visit({ end: '2026-03-10T19:00:00-04:00', plannedEnd: '2026-03-10T09:00:00-04:00' });
    expect(pickUp(known, WEEK_LATER)).toBe('Detectors picked up: Tuesday, March 10, 7:00 pm');
  });

  it('planned: the time that was arranged, or what the kit allows', () => {
    const arranged = visit({ plannedEnd: '2026-03-10T09:00:00-04:00' });
    expect(pickUp(arranged, JUST_PLACED)).toBe('Detectors to be picked up: Tuesday, March 10, 9:00 am');
    expect(pickUp(timed, JUST_PLACED)).toBe(
      'Detectors to be picked up: between Monday, March 9, 7:00 pm and Wednesday, March 11, 7:00 pm',
    );
    expect(pickUp(visit({ start: null }), TWO_DAYS_BEFORE)).toBe('Detectors to be picked up ____ not scheduled yet');
  });

  it('not known: hours of the kit that nobody entered give no window, and no days for the laboratory', () => {
    const assumed = { ...timed, kit: { ...timed.kit, hoursAnswered: false } };
    expect(pickUp(assumed, JUST_PLACED)).toBe('Detectors to be picked up ____ not scheduled yet');
    const arranged = visit({ plannedEnd: '2026-03-10T09:00:00-04:00' }, assumed);
    expect(pickUp(arranged, JUST_PLACED)).toBe('Detectors to be picked up: Tuesday, March 10, 9:00 am');
    expect(printed('placement-card', timed)).toContain(`within ${timed.kit.labDays} days`);
    expect(printed('placement-card', assumed)).toContain('within the days that its instructions name');
    expect(printed('log', timed)).toContain('Exposure (the kit: 48 to 96 h)');
    expect(printed('log', assumed)).toContain('Exposure (the kit: hours not entered)');
    expect(printed('log', assumed)).not.toContain('96 h');
  });

  it('not known: a plan that has passed is not a pick-up', () => {
    const arranged = visit({ plannedEnd: '2026-03-10T09:00:00-04:00' });
    expect(pickUp(arranged, WEEK_LATER)).toBe(
      'Detectors picked up ____ not recorded; planned for Tuesday, March 10, 9:00 am',
    );
    expect(pickUp(timed, WEEK_LATER)).toBe('Detectors picked up ____ not recorded');
  });
});
