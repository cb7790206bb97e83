import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Visit } from '../../../../geometry/plan/test-record.ts';
import { chainOf } from '../../../../src/protocol/custody/chain.ts';
import { describeTimeToSeal } from '../../../../src/protocol/custody/describe-chain.ts';
import { logEntryOf, withLogEntry } from '../../../../src/protocol/custody/log-entries.ts';
import { chained, discrepancies, kinds, may, planOf, step } from '../../../helpers/custody.ts';

describe('the chain from the house to the laboratory', () => {
  const whole = chained(
    [step(may(5, '10:00'), 'Ann Mill', 'Bo Reed')],
    { posted: may(5, '11:00'), received: may(7, '08:00') },
    { sealed: may(5, '09:02') },
  );

  it('has the visit at both ends, and the hands between, met of time', () => {
    expect(kinds(whole)).toEqual(['set-out', 'fetched', 'sealed', 'hand-over', 'posted', 'received']);
    expect(whole.steps.map(({ from, to }) => `${from}>${to}`)).toEqual([
      'Ann Mill>the house',
      'the house>Ann Mill',
      '>',
      'Ann Mill>Bo Reed',
      'Bo Reed>the mail',
      'the mail>the laboratory',
    ]);
    expect([discrepancies(whole), whole.hasDiscrepancies]).toEqual([[], false]);
  });

  it.each<{
    case: string;
    steps: readonly ReturnType<typeof step>[];
    visit?: Partial<Visit>;
    fetchedBy?: string;
    now: string;
  }>([
    { case: 'set out, no time', steps: [], visit: { start: null, end: null }, fetchedBy: '', now: 'in the house' },
    {
      case: 'placed',
      steps: [],
      visit: { end: null },
      fetchedBy: '',
      now: 'in the house, since Saturday, May 2, 9:00 am',
    },
    { case: 'picked up', steps: [], now: 'with Ann Mill, since Tuesday, May 5, 9:00 am' },
    {
      case: 'transferred',
      steps: [step(may(5, '10:00'), 'Ann Mill', 'Bo Reed')],
      now: 'with Bo Reed, since Tuesday, May 5, 10:00 am',
    },
    {
      case: 'transferred at a time that is not known',
      steps: [step(null, 'Ann Mill', 'Bo Reed')],
      now: 'with Bo Reed',
    },
    {
      case: 'posted',
      steps: [step(may(5, '10:00'), 'Ann Mill', 'Bo Reed')],
      visit: { posted: may(5, '11:00') },
      now: 'with the mail, since Tuesday, May 5, 11:00 am',
    },
    {
      case: 'at the laboratory',
      steps: [],
      visit: { posted: may(5, '11:00'), received: may(7, '08:00') },
      now: 'with the laboratory, since Thursday, May 7, 8:00 am',
    },
  ])('says who has it: $case', ({ steps, visit, fetchedBy = 'Ann Mill', now }) => {
    expect(chained(steps, visit, { fetchedBy }).currentHolder).toBe(now);
  });

  it('says so where nobody recorded who picked it up, and nothing where it was never placed', () => {
    expect(chainOf(planOf(['A1']), 'd1').currentHolder).toBe(
      'picked up, Tuesday, May 5, 9:00 am; by whom is not recorded',
    );
    expect(chainOf(planOf(['A1'], { start: null, end: null }), 'd1')).toEqual({
      steps: [],
      currentHolder: '',
      hasDiscrepancies: false,
    });
  });

  it.each<{ case: string; chain: ReturnType<typeof chained>; says: RegExp }>([
    {
      case: 'sealed after the laboratory received it, with the posting not recorded',
      chain: chained([], { received: may(6, '09:00') }, { sealed: may(6, '09:01') }),
      says: /^After the laboratory received it, Wednesday, May 6, 9:00 am\./,
    },
    {
      case: 'a transfer one minute before the pick-up',
      chain: chained([step(may(5, '08:59'), 'the house', 'Ann Mill')]),
      says: /^Before the pick-up, Tuesday, May 5, 9:00 am\./,
    },
    {
      case: 'a transfer before it was placed, with the pick-up not known yet',
      chain: chained([step(may(2, '08:59'), 'Ann Mill', 'Bo Reed')], { end: null }),
      says: /^Before it was placed, Saturday, May 2, 9:00 am\./,
    },
    {
      case: 'a transfer earlier than the one written before it',
      chain: chained([step(may(5, '11:00'), 'Ann Mill', 'Bo Reed'), step(may(5, '10:00'), 'Bo Reed', 'Cy Dale')]),
      says: /^Earlier than the transfer recorded before it, Tuesday, May 5, 11:00 am\./,
    },
    {
      case: 'from one who does not have it',
      chain: chained([step(may(5, '10:00'), 'Cy Dale', 'Bo Reed')]),
      says: /^According to the log Ann Mill had it, not Cy Dale\.$/,
    },
    {
      case: 'a transfer after the laboratory has it',
      chain: chained([step(may(7, '09:00'), 'the laboratory', 'Bo Reed')], { received: may(7, '08:00') }),
      says: /^After the laboratory received it, Thursday, May 7, 8:00 am\./,
    },
    {
      case: 'a transfer without a time',
      chain: chained([step(null, 'Ann Mill', 'Bo Reed')]),
      says: /^Its time is not recorded\.$/,
    },
    {
      case: 'a transfer without a giver',
      chain: chained([step(may(5, '10:00'), ' ', 'Bo Reed')]),
      says: /^Who gave it is not recorded\.$/,
    },
    {
      case: 'a transfer while the pick-up is not known',
      chain: chained([step(may(5, '10:00'), 'Ann Mill', 'Bo Reed')], { end: null }),
      says: /^When it was picked up is not recorded\.$/,
    },
    {
      case: 'sealed before the pick-up',
      chain: chained([], {}, { sealed: may(5, '08:59') }),
      says: /^Before the pick-up, Tuesday, May 5, 9:00 am\./,
    },
    {
      case: 'sealed after it was transferred',
      chain: chained([step(may(5, '10:00'), 'Ann Mill', 'Bo Reed')], {}, { sealed: may(5, '10:01') }),
      says: /^It was transferred before, Tuesday, May 5, 10:00 am\./,
    },
    { case: 'mailed before the pick-up', chain: chained([], { posted: may(5, '08:00') }), says: /^Before the pick-up/ },
    {
      case: 'mailed before it was sealed',
      chain: chained([], { posted: may(5, '10:00') }, { sealed: may(5, '10:30') }),
      says: /^Mailed before it was sealed\./,
    },
    {
      case: 'at the laboratory before it was mailed',
      chain: chained([], { posted: may(6, '10:00'), received: may(6, '09:59') }),
      says: /^Before it was mailed, Wednesday, May 6, 10:00 am\./,
    },
    {
      case: 'mailed when the laboratory received it according to the log',
      chain: chained([step(may(5, '10:00'), 'Ann Mill', 'Laboratory')], { posted: may(5, '11:00') }),
      says: /^The laboratory had received it by then\.$/,
    },
  ])('remarks in words: $case', ({ chain, says }) => {
    expect(chain.hasDiscrepancies).toBe(true);
    expect(discrepancies(chain).some((each) => says.test(each))).toBe(true);
  });

  it('does not hold a transfer before the pick-up against the seal too', () => {
    const chain = chained([step(may(5, '08:00'), 'the house', 'Ann Mill')], {}, { sealed: may(5, '09:05') });
    expect(chain.steps.find(({ kind }) => kind === 'sealed')?.discrepancies).toEqual([]);
  });

  it('takes the same minute as fitting: pick-up, seal, transfer and posting at once', () => {
    const at = may(5, '09:00');
    const chain = chained([step(at, 'ann  mill', 'post')], { posted: at }, { sealed: at });
    expect(kinds(chain)).toEqual(['set-out', 'fetched', 'sealed', 'hand-over', 'posted']);
    expect(discrepancies(chain)).toEqual([]);
  });

  it('is met of time however it was written, keeps every step once, and never calls a backward time fitting', () => {
    const minutes = fc.array(fc.option(fc.integer({ min: -600, max: 600 }), { nil: null }), { maxLength: 6 });
    fc.assert(
      fc.property(minutes, (offsets) => {
        const end = Date.parse(may(5, '09:00'));
        const steps = offsets.map((each) =>
          step(each === null ? null : new Date(end + each * 60_000).toISOString(), 'x', 'x'),
        );
        const chain = chained(steps);
        const times = chain.steps.map(({ at }) => at).filter((at) => at !== null);
        expect(times).toEqual(times.toSorted((a, b) => a - b));
        const places = chain.steps.map(({ index }) => index).filter((index) => index !== null);
        expect(places.toSorted((a, b) => a - b)).toEqual(steps.map((_, i) => i));
        for (const { index, discrepancies: own } of chain.steps) {
          const offset = index === null ? null : offsets[index];
          if (offset === null || offset === undefined) continue;
          const late = offsets.slice(0, index ?? 0).some((other) => other !== null && other > offset);
          expect(own.some((each) => each.startsWith('Before the pick-up'))).toBe(offset < 0);
          expect(own.some((each) => each.startsWith('Earlier than'))).toBe(late);
        }
      }),
    );
  });

  it('says how long a detector lay open after the pick-up', () => {
    const after = (sealed: string | null) =>
      describeTimeToSeal(planOf(['A1']), logEntryOf(withLogEntry(planOf(['A1']), 'd1', { sealed }), 'd1'));
    expect([may(5, '09:00'), may(5, '10:05'), may(5, '08:00'), null].map(after)).toEqual([
      'At the pick-up.',
      '1 h 5 min after the pick-up.',
      '',
      '',
    ]);
  });
});
