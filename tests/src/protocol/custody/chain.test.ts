import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Detector, Plan } from '../../../../geometry/plan/model.ts';
import type { LogEntry, Visit } from '../../../../geometry/plan/test-record.ts';
import { emptyPlan } from '../../../../geometry/planfile/empty.ts';
import { parsePlan } from '../../../../geometry/planfile/parse.ts';
import { writePlan } from '../../../../geometry/planfile/write.ts';
import { chainOf, holderOf } from '../../../../src/protocol/custody/chain.ts';
import { HOUSE } from '../../../../src/protocol/custody/chain-types.ts';
import { chainDiscrepancies, describeTimeToSeal } from '../../../../src/protocol/custody/describe-chain.ts';
import {
  allSame,
  describeDuplicateSerial,
  listDetectors,
  namedDetectors,
  namesInLog,
} from '../../../../src/protocol/custody/detectors.ts';
import { detectorsOfHandOver, withHandOvers, withoutHandOver } from '../../../../src/protocol/custody/hand-overs.ts';
import {
  logEntryOf,
  withHandOver,
  withLogEntries,
  withLogEntry,
  withWeatherNote,
} from '../../../../src/protocol/custody/log-entries.ts';
import { missingRecords } from '../../../../src/protocol/custody/missing-records.ts';
import { chronologicalWeather } from '../../../../src/protocol/custody/weather-notes.ts';

const detector = (id: string, label: string): Detector => ({
  id,
  label,
  at: [1000, 1000],
  base: 762,
  radius: 50,
  tall: 25,
  pair: null,
});
/** A day of the invented visit: fetched on 5 May at 9:00. */
const may = (day: number, time: string) => `2026-05-0${day}T${time}:00-04:00`;
const VISIT: Visit = {
  closedSince: may(1, '20:00'),
  mitigationOnSince: null,
  start: may(2, '09:00'),
  end: may(5, '09:00'),
};
const planOf = (labels: readonly string[], visit: Partial<Visit> = {}): Plan => {
  const plan = emptyPlan();
  const [level] = plan.levels;
  if (!level) throw new Error('an empty plan has a level');
  const detectors = labels.map((label, i) => detector(`d${i + 1}`, label));
  return {
    ...plan,
    site: { ...plan.site, timeZone: 'America/New_York' },
    levels: [{ ...level, name: 'Basement', detectors }],
    visit: { ...VISIT, ...visit },
  };
};
const step = (at: string | null, from: string, to: string) => ({ at, from, to, note: '' });
/** d1 was set out and fetched by Ann Mill, then went through these hands. */
const chained = (
  steps: readonly ReturnType<typeof step>[],
  visit: Partial<Visit> = {},
  entry: Partial<LogEntry> = {},
) =>
  chainOf(
    steps.reduce(
      (plan, each) => withHandOver(plan, 'd1', each),
      withLogEntry(planOf(['A1'], visit), 'd1', { placedBy: 'Ann Mill', fetchedBy: 'Ann Mill', ...entry }),
    ),
    'd1',
  );
const discrepancies = (chain: ReturnType<typeof chained>) => chain.steps.flatMap((each) => each.discrepancies);
const kinds = (chain: ReturnType<typeof chained>) => chain.steps.map(({ kind }) => kind);

describe('the chain from the house to the laboratory', () => {
  const whole = chained(
    [step(may(5, '10:00'), 'Ann Mill', 'Bo Reed')],
    { posted: may(5, '11:00'), received: may(7, '08:00') },
    { sealed: may(5, '09:02') },
  );

  it('has the visit at both ends, and the hands between, in order of time', () => {
    expect(kinds(whole)).toEqual(['set-out', 'fetched', 'sealed', 'hand-over', 'posted', 'received']);
    expect(whole.steps.map(({ from, to }) => `${from}>${to}`)).toEqual([
      'Ann Mill>the house',
      'the house>Ann Mill',
      '>',
      'Ann Mill>Bo Reed',
      'Bo Reed>the post',
      'the post>the laboratory',
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
      case: 'set out',
      steps: [],
      visit: { end: null },
      fetchedBy: '',
      now: 'in the house, since Saturday 2 May, 9:00',
    },
    { case: 'fetched', steps: [], now: 'with Ann Mill, since Tuesday 5 May, 9:00' },
    {
      case: 'handed over',
      steps: [step(may(5, '10:00'), 'Ann Mill', 'Bo Reed')],
      now: 'with Bo Reed, since Tuesday 5 May, 10:00',
    },
    {
      case: 'handed over at a time that is not known',
      steps: [step(null, 'Ann Mill', 'Bo Reed')],
      now: 'with Bo Reed',
    },
    {
      case: 'posted',
      steps: [step(may(5, '10:00'), 'Ann Mill', 'Bo Reed')],
      visit: { posted: may(5, '11:00') },
      now: 'with the post, since Tuesday 5 May, 11:00',
    },
    {
      case: 'at the laboratory',
      steps: [],
      visit: { posted: may(5, '11:00'), received: may(7, '08:00') },
      now: 'with the laboratory, since Thursday 7 May, 8:00',
    },
  ])('says who has it: $case', ({ steps, visit, fetchedBy = 'Ann Mill', now }) => {
    expect(chained(steps, visit, { fetchedBy }).currentHolder).toBe(now);
  });

  it('says so where nobody wrote down who fetched it, and nothing where it was never set out', () => {
    expect(chainOf(planOf(['A1']), 'd1').currentHolder).toBe(
      'fetched, Tuesday 5 May, 9:00; by whom is not written down',
    );
    expect(chainOf(planOf(['A1'], { start: null, end: null }), 'd1')).toEqual({
      steps: [],
      currentHolder: '',
      hasDiscrepancies: false,
    });
  });

  it.each<{ case: string; chain: ReturnType<typeof chained>; says: RegExp }>([
    {
      case: 'sealed after the laboratory had it, with the posting not written down',
      chain: chained([], { received: may(6, '09:00') }, { sealed: may(6, '09:01') }),
      says: /^After the laboratory had it, Wednesday 6 May, 9:00\./,
    },
    {
      case: 'a hand-over one minute before the pick-up',
      chain: chained([step(may(5, '08:59'), 'the house', 'Ann Mill')]),
      says: /^Before the pick-up, Tuesday 5 May, 9:00\./,
    },
    {
      case: 'a hand-over before it was set out, with the pick-up not known yet',
      chain: chained([step(may(2, '08:59'), 'Ann Mill', 'Bo Reed')], { end: null }),
      says: /^Before it was set out, Saturday 2 May, 9:00\./,
    },
    {
      case: 'a hand-over earlier than the one written before it',
      chain: chained([step(may(5, '11:00'), 'Ann Mill', 'Bo Reed'), step(may(5, '10:00'), 'Bo Reed', 'Cy Dale')]),
      says: /^Earlier than the hand-over written before it, Tuesday 5 May, 11:00\./,
    },
    {
      case: 'from one who does not have it',
      chain: chained([step(may(5, '10:00'), 'Cy Dale', 'Bo Reed')]),
      says: /^By the log Ann Mill had it, not Cy Dale\.$/,
    },
    {
      case: 'a hand-over after the laboratory has it',
      chain: chained([step(may(7, '09:00'), 'the laboratory', 'Bo Reed')], { received: may(7, '08:00') }),
      says: /^After the laboratory had it, Thursday 7 May, 8:00\./,
    },
    {
      case: 'a hand-over without a time',
      chain: chained([step(null, 'Ann Mill', 'Bo Reed')]),
      says: /^Its time is not written down\.$/,
    },
    {
      case: 'a hand-over without a giver',
      chain: chained([step(may(5, '10:00'), ' ', 'Bo Reed')]),
      says: /^Who gave it is not written down\.$/,
    },
    {
      case: 'a hand-over while the pick-up is not known',
      chain: chained([step(may(5, '10:00'), 'Ann Mill', 'Bo Reed')], { end: null }),
      says: /^When it was fetched is not written down\.$/,
    },
    {
      case: 'sealed before the pick-up',
      chain: chained([], {}, { sealed: may(5, '08:59') }),
      says: /^Before the pick-up, Tuesday 5 May, 9:00\./,
    },
    {
      case: 'sealed after it had changed hands',
      chain: chained([step(may(5, '10:00'), 'Ann Mill', 'Bo Reed')], {}, { sealed: may(5, '10:01') }),
      says: /^It had changed hands before, Tuesday 5 May, 10:00\./,
    },
    { case: 'posted before the pick-up', chain: chained([], { posted: may(5, '08:00') }), says: /^Before the pick-up/ },
    {
      case: 'posted before it was sealed',
      chain: chained([], { posted: may(5, '10:00') }, { sealed: may(5, '10:30') }),
      says: /^Posted before it was sealed\./,
    },
    {
      case: 'at the laboratory before it was posted',
      chain: chained([], { posted: may(6, '10:00'), received: may(6, '09:59') }),
      says: /^Before it was posted, Wednesday 6 May, 10:00\./,
    },
    {
      case: 'posted when the laboratory had it by the log',
      chain: chained([step(may(5, '10:00'), 'Ann Mill', 'Laboratory')], { posted: may(5, '11:00') }),
      says: /^The laboratory had it by then\.$/,
    },
  ])('remarks in words: $case', ({ chain, says }) => {
    expect(chain.hasDiscrepancies).toBe(true);
    expect(discrepancies(chain).some((each) => says.test(each))).toBe(true);
  });

  it('does not hold a hand-over before the pick-up against the seal too', () => {
    const chain = chained([step(may(5, '08:00'), 'the house', 'Ann Mill')], {}, { sealed: may(5, '09:05') });
    expect(chain.steps.find(({ kind }) => kind === 'sealed')?.discrepancies).toEqual([]);
  });

  it('takes the same minute as fitting: pick-up, seal, hand-over and posting at once', () => {
    const at = may(5, '09:00');
    const chain = chained([step(at, 'ann  mill', 'post')], { posted: at }, { sealed: at });
    expect(kinds(chain)).toEqual(['set-out', 'fetched', 'sealed', 'hand-over', 'posted']);
    expect(discrepancies(chain)).toEqual([]);
  });

  it('is in order of time however it was written, keeps every step once, and never calls a backward time fitting', () => {
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

describe('several detectors', () => {
  const three = planOf(['A1', 'A2', 'A3']);
  const ids = ['d1', 'd2', 'd3'];

  it('are written down in one, and what each has besides stays', () => {
    const plan = withLogEntries(withLogEntry(three, 'd2', { serial: 'C-2', note: 'on the shelf' }), ids, {
      placedBy: 'Ann Mill',
    });
    expect(ids.map((id) => logEntryOf(plan, id).placedBy)).toEqual(['Ann Mill', 'Ann Mill', 'Ann Mill']);
    expect(logEntryOf(plan, 'd2')).toMatchObject({ serial: 'C-2', note: 'on the shelf' });
  });

  it('go from hand to hand as a box, each from whoever has it, and the file reads them back', () => {
    const fetched = withLogEntry(withLogEntries(three, ids, { fetchedBy: 'Ann Mill' }), 'd3', { fetchedBy: 'Bo Reed' });
    const plan = withHandOvers(fetched, ids, { at: may(5, '10:00'), from: null, to: 'Cy Dale', note: 'blue box' });
    expect(ids.map((id) => logEntryOf(plan, id).custody[0]?.from)).toEqual(['Ann Mill', 'Ann Mill', 'Bo Reed']);
    expect(ids.map((id) => holderOf(plan, id))).toEqual(['Cy Dale', 'Cy Dale', 'Cy Dale']);
    expect(ids.flatMap((id) => chainOf(plan, id).steps.flatMap((each) => each.discrepancies))).toEqual([]);
    const read = parsePlan(writePlan(plan));
    expect(read.ok && read.plan.log).toEqual(plan.log);
  });

  it('that went in one box are found by it, and it is taken away for all of them or for some', () => {
    const box = { at: may(5, '10:00'), from: null, to: 'Cy Dale', note: 'blue box' };
    const plan = withHandOver(
      withHandOvers(three, ['d1', 'd3'], box),
      'd3',
      step(may(5, '11:00'), 'Cy Dale', 'Bo Reed'),
    );
    const gone = { ...box, from: '' };
    const together = detectorsOfHandOver(plan, gone);
    expect(together.map(({ name }) => name)).toEqual(['A1', 'A3']);
    const after = withoutHandOver(plan, together, gone);
    expect(ids.map((id) => logEntryOf(after, id).custody.map(({ to }) => to))).toEqual([[], [], ['Bo Reed']]);
    expect(withoutHandOver(after, together, gone)).toEqual(after);
  });

  it('say what does not fit with the detectors that it is said of, those that went together in one line', () => {
    const fetched = withLogEntry(withLogEntries(three, ids, { fetchedBy: 'Ann Mill' }), 'd3', { fetchedBy: 'Bo Reed' });
    const plan = withHandOvers(fetched, ids, { at: may(5, '10:00'), from: 'Ann Mill', to: 'Cy Dale', note: '' });
    expect(chainDiscrepancies(plan).map(({ text }) => text)).toEqual([
      'A3, Ann Mill to Cy Dale: By the log Bo Reed had it, not Ann Mill.',
    ]);
    const early = withHandOvers(fetched, ['d1', 'd2'], { at: may(5, '08:00'), from: HOUSE, to: 'Cy Dale', note: '' });
    expect(chainDiscrepancies(early)[0]?.text).toMatch(/^A1 and A2, the house to Cy Dale: Before the pick-up/);
  });

  it('are named by label, by label and level where two have the same, and by id without one', () => {
    const plan = planOf(['A1', ' ']);
    const [cellar] = plan.levels;
    if (!cellar) throw new Error('no level');
    const upstairs = { ...cellar, id: 'level-2', name: 'First floor', order: 1, detectors: [detector('d9', 'A1')] };
    const named = namedDetectors({ ...plan, levels: [cellar, upstairs] });
    expect(named.map(({ name }) => name)).toEqual(['A1 (Basement)', 'd2', 'A1 (First floor)']);
  });

  it('are said in few words', () => {
    const all = namedDetectors(three);
    expect(listDetectors(all, all)).toBe('All 3 detectors');
    expect(listDetectors(all.slice(0, 2), all)).toBe('A1 and A2');
    expect([allSame([]), allSame(['a', 'a']), allSame(['a', 'b'])]).toEqual([true, true, false]);
  });

  it('offer the names of the log, each once', () => {
    const plan = withHandOver(
      withLogEntries(three, ids, { placedBy: 'Ann Mill ' }),
      'd1',
      step(null, 'Ann Mill', 'Bo Reed'),
    );
    expect(namesInLog(plan)).toEqual(['Ann Mill', 'Bo Reed']);
  });
});

describe('serial numbers', () => {
  const two = withLogEntry(withLogEntry(planOf(['A1', 'A2']), 'd1', { serial: 'C-1001' }), 'd2', { serial: ' c-1001' });

  it('that stand twice are remarked at both, whatever the scanner makes of blanks and capitals', () => {
    expect(describeDuplicateSerial(two, 'd1')).toBe('A2 has the same serial number. Look at the labels again.');
    expect(describeDuplicateSerial(two, 'd2')).toBe('A1 has the same serial number. Look at the labels again.');
    expect(missingRecords(two)).toContain('A1: A2 has the same serial number. Look at the labels again.');
  });

  it('of a blank or spike of the plan count too; none at all is no double', () => {
    const blank = {
      id: 'q1',
      kind: 'blank',
      at: null,
      serial: 'C-7',
      by: '',
      value: 0.1,
      unit: 'pCi/L',
      reference: null,
      detectionLimit: null,
      note: '',
    } as const;
    const plan: Plan = { ...withLogEntry(planOf(['A1', 'A2']), 'd1', { serial: 'C-7' }), quality: [blank] };
    expect(describeDuplicateSerial(plan, 'd1')).toBe('A blank has the same serial number. Look at the labels again.');
    expect(describeDuplicateSerial(planOf(['A1', 'A2']), 'd1')).toBe('');
  });

  it('are remarked exactly where two are the same', () => {
    const serials = fc.array(fc.constantFrom('', 'A', 'a', ' A ', 'B', 'B 2', 'b2'), { minLength: 1, maxLength: 6 });
    fc.assert(
      fc.property(serials, (all) => {
        const plan = all.reduce(
          (now, serial, i) => withLogEntry(now, `d${i + 1}`, { serial }),
          planOf(all.map((_, i) => `K${i}`)),
        );
        const plain = all.map((serial) => serial.replaceAll(' ', '').toLowerCase());
        for (const [i, own] of plain.entries()) {
          const twice = own !== '' && plain.some((other, j) => j !== i && other === own);
          expect(describeDuplicateSerial(plan, `d${i + 1}`) !== '').toBe(twice);
        }
      }),
    );
  });
});

describe('what the records lack', () => {
  it('no longer asks whose hands it went through once it was posted', () => {
    const asked = (visit: Partial<Visit>) =>
      missingRecords(planOf(['A1'], visit)).some((gap) => gap.startsWith('Whose hands'));
    expect([asked({}), asked({ posted: may(5, '11:00') }), asked({ received: may(7, '08:00') })]).toEqual([
      true,
      false,
      false,
    ]);
  });

  it('asks for no seal and no hands of a monitor, which is read on the spot', () => {
    const asked = missingRecords(planOf(['A1'], { device: 'monitor' }));
    expect(asked.filter((gap) => /sealed|hands/.test(gap))).toEqual([]);
    expect(asked).toContain('Who fetched A1 is not written down.');
  });
});

describe('the weather', () => {
  it('is told in order of time, and says what lies outside the test', () => {
    const notes = [
      { at: null, text: 'calm' },
      { at: may(5, '10:00'), text: 'dry' },
      { at: may(3, '08:00'), text: 'rain' },
      { at: may(1, '08:00'), text: 'snow' },
    ];
    const plan = notes.reduce(withWeatherNote, planOf(['A1']));
    expect(chronologicalWeather(plan).map(({ index, when, note }) => [index, when, note.text])).toEqual([
      [3, 'Friday 1 May, 8:00, before the test', 'snow'],
      [2, 'Sunday 3 May, 8:00', 'rain'],
      [1, 'Tuesday 5 May, 10:00, after the test', 'dry'],
      [0, 'Time not known', 'calm'],
    ]);
  });
});
