import { existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import ICAL from 'ical.js';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { Condition, ConditionState, Visit } from '../../../geometry/plan/test-record.ts';
import { writePlan } from '../../../geometry/planfile/write.ts';
import { CONDITION_ITEMS } from '../../../src/protocol/conditions/conditions-report.ts';
import { callCli } from '../../helpers/call-cli.ts';
import { GOOD_VISIT, validTestPlan } from '../../helpers/valid-test-plan.ts';

let folder: string;
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'stillspot-cli-job-'));
});
afterAll(() => rmSync(folder, { recursive: true }));

/** Every item of the list in this state. */
const house = (state: ConditionState): readonly Condition[] =>
  CONDITION_ITEMS.map(({ id }) => ({ item: id, state, at: null, note: '' }));

/** A pair with these results, pCi/L, in a job for which nothing is missing unless told; as a file. */
function file(
  name: string,
  values: readonly number[],
  visit: Partial<Visit> = {},
  conditions: readonly Condition[] = house('kept'),
): string {
  const plan = validTestPlan(values, { title: name, visit: { ...GOOD_VISIT, ...visit }, conditions });
  const path = join(folder, `${name}.plan.json`);
  writeFileSync(path, writePlan(plan));
  return path;
}

describe('stillspot timing', () => {
  it('prints the instants in the zone of the site and a verdict for each rule, and ends with 0 when none is broken', async () => {
    const { code, out } = await callCli('timing', file('in time', []), '--json');
    const report = JSON.parse(out);
    expect(code).toBe(0);
    expect(report).toMatchObject({
      exposureHours: 62,
      earliestEnd: '2026-03-09T19:00:00-04:00',
      latestEnd: '2026-03-11T19:00:00-04:00',
      closeBy: '2026-03-07T06:00:00-05:00',
      mitigationOnBy: '2026-03-06T18:00:00-05:00',
    });
    for (const check of report.checks)
      expect(Object.keys(check)).toEqual(expect.arrayContaining(['rule', 'verdict', 'detail']));
  });

  it('ends with 1 for 47 h 59 min, and for what is not known', async () => {
    const short = await callCli('timing', file('short', [], { end: '2026-03-09T18:59:00-04:00' }), '--json');
    expect(short.code).toBe(1);
    expect(JSON.parse(short.out).checks.find(({ rule }: { rule: string }) => rule === 'exposure').verdict).toBe(
      'blocked',
    );
    const unknown = await callCli('timing', file('open', [], { start: null, end: null }));
    expect(unknown.code).toBe(1);
    expect(unknown.out).toContain('Exposure: unknown.');
    expect(unknown.out).toContain(
      'A certified or licensed professional decides whether a result may be used, in your own home too.',
    );
  });
});

describe('what every command says of the whole test', () => {
  it.each(['check', 'timing', 'readings'])(
    '%s leads with its state, never greener than its worst part',
    async (name) => {
      const whole = file('whole', [1, 1.1]);
      expect((await callCli(name, whole)).out).toContain('The test: valid.');
      const opened = file('opened', [1, 1.1], {}, house('broken'));
      expect((await callCli(name, opened)).out).toContain('The test: invalid, do not use.');
      expect(JSON.parse((await callCli(name, opened, '--json')).out).test).toBe('not-evaluated');
    },
  );

  it('readings says how the placement was evaluated that a result rests on', async () => {
    const path = file('rests', [1, 1.1]);
    const { placement } = JSON.parse((await callCli('readings', path, '--json')).out);
    expect(placement).toEqual([
      { detector: 'L1d1', verdict: 'tight', computed: 'twice', open: [] },
      { detector: 'L1d2', verdict: 'tight', computed: 'twice', open: [] },
    ]);
    const { out } = await callCli('readings', path);
    expect(out).toContain('A1: tight. Measure again: 1/2 in to spare at detector A2.');
    expect(out).toContain('Computed twice, in two ways.');
  });
});

describe('stillspot readings', () => {
  it('prints the sets as the contract has them', async () => {
    const { code, out } = await callCli('readings', file('agree', [3.9, 4]), '--json');
    const { sets } = JSON.parse(out);
    expect(code).toBe(0);
    expect(sets[0]).toMatchObject({
      pair: 'A',
      detectors: ['L1d1', 'L1d2'],
      standing: 'holds',
      mean: 3.95,
      meanRounded: 4,
      agreement: 'in-control',
    });
    expect(sets[0].rpd).toBeCloseTo((100 * 0.1) / 3.95, 9);
    expect(sets[0].nextStep).toContain('Follow up');
  });

  it.each([
    [[3, 6], 'straddles-by-two'],
    [[4, 5.76], 'out-of-control'],
  ] as const)('%j ends with 1: %s', async (values, agreement) => {
    const { code, out } = await callCli('readings', file(agreement, values), '--json');
    expect([code, JSON.parse(out).sets[0].agreement]).toEqual([1, agreement]);
  });

  it('of a test outside its window are invalid and stay on record', async () => {
    const { code, out } = await callCli('readings', file('late', [5, 5.1], { end: '2026-03-20T09:00:00-04:00' }));
    expect(code).toBe(1);
    expect(out).toContain('5.1 pCi/L');
    expect(out).toContain('These results are invalid');
  });
});

describe('stillspot readings and the house', () => {
  const broken = house('kept').map(
    (each): Condition => (each.item === 'windows-closed' ? { ...each, state: 'broken' } : each),
  );

  it('are no pass while nobody has answered for the house: unknown, with what is missing', async () => {
    const path = file('unanswered', [3, 3.1], {}, []);
    const { code, out } = await callCli('readings', path, '--json');
    const { test, reasons } = JSON.parse(out);
    expect([code, test]).toEqual([1, 'unknown']);
    // Every item but the one that only a house with a mitigation system has.
    expect(reasons).toEqual([
      `The house: ${CONDITION_ITEMS.length - 1} items not known yet. Correct this under House.`,
    ]);
    const text = await callCli('readings', path);
    expect(text.out).toContain('no result of it passes before what is missing is recorded');
    expect(text.out).toContain('items not known yet');
  });

  it('are not evaluated when a condition was broken that a test falls with: no average and no step from the value', async () => {
    const path = file('broken', [1, 1.1], {}, broken);
    const { code, out } = await callCli('readings', path, '--json');
    const { test, sets, reasons } = JSON.parse(out);
    expect([code, test, sets[0].step]).toEqual([1, 'not-evaluated', 'not-evaluated']);
    expect(reasons[0]).toContain('"Windows closed on every level"');
    const text = (await callCli('readings', path)).out;
    expect(text).toContain('1 pCi/L');
    expect(text).not.toContain('Average');
    expect(text).not.toContain('does not call for fixing the home');
  });

  it('end with 1 when a professional has to look at a break; a time that is not recorded is unknown', async () => {
    const handler = house('kept').map(
      (each): Condition => (each.item === 'air-handler-not-continuous' ? { ...each, state: 'broken' } : each),
    );
    const look = await callCli('readings', file('handler', [1, 1.1], {}, handler), '--json');
    expect([look.code, JSON.parse(look.out).test]).toEqual([1, 'unknown']);
    const open = await callCli('readings', file('no end', [1, 1.1], { end: null }), '--json');
    expect([open.code, JSON.parse(open.out).test]).toEqual([1, 'unknown']);
    expect(JSON.parse(open.out).reasons.join()).toContain('Exposure');
  });

  it('end with 1 where no result is entered: nothing holds yet', async () => {
    const { code, out } = await callCli('readings', file('no results', []));
    expect(code).toBe(1);
    expect(out).toContain('No result is entered yet.');
  });

  it('have the cautions in the document too', async () => {
    const { out } = await callCli('readings', file('cautions', [3, 3.1]), '--json');
    expect(JSON.parse(out).cautions.join(' ')).toContain('A short-term test does not show the yearly average');
  });

  it('is no matter of timing: that looks at the times alone', async () => {
    expect((await callCli('timing', file('timing', [], {}, broken), '--json')).code).toBe(0);
  });
});

describe('stillspot quality', () => {
  it('counts over many files, prints charts, and goes out as a table', async () => {
    const files = [file('one', [5, 5.2]), file('two', [6, 6.1]), file('three', [2.5, 2.6])];
    const { code, out } = await callCli('quality', ...files, '--json');
    const book = JSON.parse(out);
    expect(code).toBe(0);
    expect(book.months).toEqual([
      {
        month: '2026-03',
        device: 'charcoal-barrier',
        measurements: 3,
        awaited: 0,
        duplicates: { done: 3, owed: 1 },
        blanks: { done: 0, owed: 1 },
        spikes: { done: 0, owed: 1 },
      },
    ]);
    expect(book.charts.map(({ rows }: { rows: unknown[] }) => rows.length)).toEqual([2, 1, 0]);
    const table = await callCli('quality', ...files, '--csv');
    // Outstanding is what is still to be done: three pairs where one is required leave none.
    expect(table.out.split('\r\n').slice(0, 5)).toEqual([
      'month,device,measurements,awaiting results,pairs,pairs required,pairs outstanding,blanks,blanks required,blanks outstanding,spikes,spikes required,spikes outstanding',
      '2026-03,charcoal-barrier,3,0,3,1,0,0,1,1,0,1,1',
      '',
      'year,device,spikes,spikes required,spikes outstanding',
      '2026,charcoal-barrier,0,3,3',
    ]);
    const text = await callCli('quality', ...files);
    expect(text.out).toContain('2026-03, charcoal-barrier: 3 measured; collocated pairs (side by side) 3 of 1');
    expect(text.out).toContain('field blanks 0 of 1 (1 outstanding), spikes 0 of 1 (1 outstanding)');
    expect(text.out).toContain('spikes of the year 0 of 3 (3 outstanding)');
  });

  it('counts a file that is named twice, by whatever way, once: nothing owed is met by naming it again', async () => {
    const one = file('again', [5, 5.2]);
    const { out } = await callCli('quality', one, one, join(folder, '.', 'again.plan.json'), '--json');
    expect(JSON.parse(out).months[0]).toMatchObject({ measurements: 1, duplicates: { done: 1, owed: 1 } });
  });

  it('ends with 1 when a pair is out of control, and with 2 when one of many files is not usable', async () => {
    expect((await callCli('quality', file('apart', [4, 8]), '--json')).code).toBe(1);
    const { code, out, err } = await callCli('quality', file('fine', [1, 1]), join(folder, 'missing.plan.json'));
    expect([code, out]).toEqual([2, '']);
    expect(err).toContain('there is no such file');
  });
});

describe('stillspot calendar', () => {
  it('writes a file that an independent parser reads', async () => {
    const out = join(folder, 'visit.ics');
    const { code, out: said } = await callCli('calendar', file('visit', []), '--out', out);
    expect(code).toBe(0);
    expect(said).toContain('Wrote ');
    const calendar = new ICAL.Component(ICAL.parse(readFileSync(out, 'utf8')));
    expect(calendar.getAllSubcomponents('vevent').length).toBeGreaterThan(4);
  });

  it('prints with --json one document of what was written, in the zone of the site', async () => {
    const out = join(folder, 'document.ics');
    const { code, out: said, err } = await callCli('calendar', file('document', []), '--out', out, '--json');
    expect([code, err]).toEqual([0, '']);
    const { events } = JSON.parse(said);
    // 48 to 96 h after 18:00 on 7 March 2026; the clocks go forward on the 8th.
    const kinds = Object.fromEntries(events.map((each: { kind: string }) => [each.kind, each]));
    expect(kinds.start.start).toBe('2026-03-07T18:00:00-05:00');
    expect(events.map(({ start }: { start: string }) => start)).toContain('2026-03-09T19:00:00-04:00');
    expect(existsSync(out)).toBe(true);
  });

  it('writes nothing of a file that is not valid', async () => {
    const bad = join(folder, 'bad.plan.json');
    writeFileSync(bad, '{"format":"stillspot-plan","version":1}');
    const out = join(folder, 'bad.ics');
    const { code, err } = await callCli('calendar', bad, '--out', out);
    expect([code, existsSync(out)]).toEqual([2, false]);
    expect(err).toContain('/levels');
  });

  it('replaces a file only with --force, and a plan never', async () => {
    const [plan, out] = [file('kept', []), join(folder, 'there.ics')];
    writeFileSync(out, 'old');
    const kept = await callCli('calendar', plan, '--out', out);
    expect([kept.code, readFileSync(out, 'utf8')]).toEqual([2, 'old']);
    expect(kept.err).toContain('this file is there already');
    expect((await callCli('calendar', plan, '--out', out, '--force')).code).toBe(0);
    expect(readFileSync(out, 'utf8')).toMatch(/^BEGIN:VCALENDAR/);
    const before = readFileSync(plan, 'utf8');
    expect((await callCli('calendar', plan, '--out', plan, '--force')).code).toBe(2);
    expect(readFileSync(plan, 'utf8')).toBe(before);
  });

  it.each(['visit.pdf', 'visit', 'visit.ics.txt'])(
    'refuses %s: the ending tells programs what a file is',
    async (name) => {
      const out = join(folder, name);
      const { code, out: said, err } = await callCli('calendar', file('ending', []), '--out', out);
      expect({ code, said, written: existsSync(out) }).toEqual({ code: 2, said: '', written: false });
      expect(err).toContain(`--out ${out}: give the file an ending that tells its format: .ics.`);
      expect((await callCli('calendar', file('ending', []), '--out', join(folder, 'LOUD.ICS'))).code).toBe(0);
      rmSync(join(folder, 'LOUD.ICS'));
    },
  );

  it('writes nothing without a start, and asks for the name of the file', async () => {
    const out = join(folder, 'none.ics');
    const none = await callCli('calendar', file('none', [], { start: null, end: null }), '--out', out);
    expect(none.code).toBe(2);
    expect(none.err).toContain('/visit/start: The start is not recorded');
    expect(existsSync(out)).toBe(false);
    expect((await callCli('calendar', file('name', []))).err).toContain('calendar needs --out');
  });
});
