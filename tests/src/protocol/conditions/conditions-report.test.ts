import { describe, expect, it } from 'vitest';
import type { Plan } from '../../../../geometry/plan/model.ts';
import type { Condition, ConditionState, Visit } from '../../../../geometry/plan/test-record.ts';
import { emptyPlan } from '../../../../geometry/planfile/empty.ts';
import { parsePlan } from '../../../../geometry/planfile/parse.ts';
import { writePlan } from '../../../../geometry/planfile/write.ts';
import { withAgreement } from '../../../../src/protocol/conditions/agreement.ts';
import type { DeviationEffect } from '../../../../src/protocol/conditions/condition-row.ts';
import { conditionTexts } from '../../../../src/protocol/conditions/condition-texts.ts';
import { CONDITION_ITEMS, conditionsReport } from '../../../../src/protocol/conditions/conditions-report.ts';
import { withCondition } from '../../../../src/protocol/conditions/edit-conditions.ts';
import {
  withHandOver,
  withLogEntry,
  withoutWeatherNote,
  withWeatherNote,
} from '../../../../src/protocol/custody/log-entries.ts';
import { missingRecords } from '../../../../src/protocol/custody/missing-records.ts';
import { evaluateResults } from '../../../../src/protocol/results/evaluate-results.ts';
import { failing, visitValidity } from '../../../helpers/results.ts';

/** A visit whose times hold: 13 h closed, 72 h out. */
const VISIT: Visit = {
  closedSince: '2026-05-01T20:00:00-04:00',
  mitigationOnSince: null,
  start: '2026-05-02T09:00:00-04:00',
  end: '2026-05-05T09:00:00-04:00',
};
const said = (item: string, state: ConditionState): Condition => ({ item, state, at: null, note: '' });
const planWith = (conditions: readonly Condition[], change: Partial<Plan> = {}): Plan => ({
  ...emptyPlan(),
  visit: VISIT,
  conditions,
  ...change,
});
const keptBut = (...others: readonly Condition[]): readonly Condition[] => [
  ...CONDITION_ITEMS.filter(({ onlyWith, id }) => !onlyWith && !others.some(({ item }) => item === id)).map(({ id }) =>
    said(id, 'kept'),
  ),
  ...others,
];
const rowFor = (plan: Plan, id: string) => conditionsReport(plan).rows.find(({ item }) => item.id === id);
const withDetector = (plan: Plan): Plan => ({
  ...plan,
  levels: plan.levels.map((level, i) =>
    i > 0
      ? level
      : {
          ...level,
          detectors: [{ id: 'd1', label: 'K1', at: [1000, 1000], base: 762, radius: 50, tall: 25, pair: null }],
        },
  ),
});

const [MAH, MALB] = ['ANSI/AARST MAH-2019', 'ANSI/AARST MALB-2014 with 1/21 revisions'];
const IL = '32 Ill. Adm. Code 422.130';
const EPA = 'EPA 402-R-92-003, 2.3.2';

const LETTER = {
  primary: 'P',
  secondary: 'S',
  'our-reading': 'R',
  memory: 'M',
  computed: 'W',
  'common-practice': 'C',
} as const;

const withTexts = CONDITION_ITEMS.map((item) => ({ ...item, ...conditionTexts(item) }));

describe('each item of the list', () => {
  // What the texts that are named beside it ask; P: the text itself was read, S: a page that quotes it or sums it up, R: our reading of it.
  it.each<[string, RegExp, readonly string[], DeviationEffect]>([
    ['windows-closed', /all levels.*not tested/, [`P ${MAH}, Exh. 2`, `P ${MALB}, 4-A`], 'not-evaluated'],
    [
      'doors-closed',
      /normal entry and exit.*few minutes/,
      [`P ${MAH}, Exh. 2`, `S ${EPA} (copy of the text)`],
      'not-evaluated',
    ],
    [
      'whole-house-fan-off',
      /removed or sealed/,
      [`P ${MAH}, Exh. 4`, `S ${IL}, closed-building list`],
      'not-evaluated',
    ],
    ['outdoor-air-lowest', /lowest setting of any season/, [`P ${MAH}, Exh. 2 and 4`], 'professional-review'],
    ['air-handler-not-continuous', /radon control/, [`S ${IL}, closed-building list`], 'professional-review'],
    [
      'exhausts-moderate',
      /Short use is fine/,
      [`P ${MAH}, Exh. 2`, `P ${MALB}, 4-A`, `S ${EPA} (copy of the text)`],
      'professional-review',
    ],
    [
      'window-air-conditioner-recirculating',
      /20 ft \(6\.1 m\)/,
      [`S ${IL}, closed-building list`],
      'professional-review',
    ],
    ['combustion-air-open', /not closed/, [`P ${MALB}, 4.2.1`, `S ${EPA} (copy of the text)`], 'professional-review'],
    [
      'heat-recovery-as-usual',
      /may run/,
      [`S ${EPA} (copy of the text)`, `S ${IL}, closed-building list`],
      'professional-review',
    ],
    ['attic-fan-as-usual', /only the attic/, [`S ${EPA} (copy of the text)`], 'professional-review'],
    [
      'heating-cooling-normal',
      /65 to 80 °F \(18 to 27 °C\)/,
      [`P ${MAH}, Exh. 2 and 4`, `P ${MALB}, 4-A`, `S ${EPA} (copy of the text)`, `S ${IL}, closed-building list`],
      'professional-review',
    ],
    ['fireplaces-off', /unless it is the normal heat of the house/, [`P ${MAH}, Exh. 2 and 4`], 'professional-review'],
    ['room-machines-off', /20 ft \(6\.1 m\)/, [`S ${IL}, closed-building list`], 'professional-review'],
    [
      'mitigation-running',
      /24 h/,
      ['S EPA checklist for home buyers', `R ${MAH}, 7.3.2, written for the test after mitigation, for any test`],
      'not-evaluated',
    ],
    ['no-severe-weather', /30 mph \(48 km\/h\)/, [`P ${MAH}, 2.2.3`, `S ${IL}(b)(1)(D)`], 'professional-review'],
    [
      'not-disturbed',
      /moves, covers, opens/,
      [`P ${MAH}, Exh. 4`, 'P 25 Pa. Code 240.310(a)(1)(viii) and (a)(4)(i)', 'P 32 Ill. Adm. Code 422.70(g)'],
      'not-evaluated',
    ],
  ])('%s', (id, asks, sources, means) => {
    const item = withTexts.find((each) => each.id === id);
    expect(item?.requirement).toMatch(asks);
    expect(item?.sources.map(({ mark, cite }) => `${LETTER[mark]} ${cite}`)).toEqual(sources);
    expect(item?.deviationEffect).toBe(means);
    expect(rowFor(planWith([said(id, 'broken')]), id)?.effect).toBe(means);
  });

  it('shows where two texts differ: bath fans as usual, or not overused', () => {
    const differing = withTexts.filter(({ conflict }) => conflict);
    expect(differing.map(({ id }) => id)).toEqual(['exhausts-moderate']);
    expect(differing[0]?.conflict).toMatch(/MALB-2014 .*4-A, has bath fans operate normally.*MAH-2019.*strict/);
  });

  it('has an id of its own, and there are no others', () => {
    expect(new Set(CONDITION_ITEMS.map(({ id }) => id)).size).toBe(16);
    expect(CONDITION_ITEMS).toHaveLength(16);
  });

  it('is asked on the way from the detector outward', () => {
    const order = CONDITION_ITEMS.map(({ id }) => id);
    const zones = [
      ['not-disturbed'],
      ['room-machines-off', 'window-air-conditioner-recirculating', 'fireplaces-off'],
      ['heating-cooling-normal', 'air-handler-not-continuous', 'combustion-air-open', 'mitigation-running'],
      ['exhausts-moderate', 'windows-closed', 'doors-closed', 'whole-house-fan-off', 'attic-fan-as-usual'],
      ['no-severe-weather'],
    ];
    for (const [i, zone] of zones.entries()) {
      const places = zone.map((id) => order.indexOf(id));
      expect(Math.min(...places), `zone ${i}`).toBeGreaterThanOrEqual(0);
      const before = zones
        .slice(0, i)
        .flat()
        .map((id) => order.indexOf(id));
      expect(Math.min(...places)).toBeGreaterThan(Math.max(-1, ...before));
    }
  });
});

describe('the whole', () => {
  it('is never a pass while one item is not known', () => {
    expect(conditionsReport(planWith([])).validity).toBe('unknown');
    for (const { id, name } of CONDITION_ITEMS.filter(({ onlyWith }) => !onlyWith)) {
      const report = conditionsReport(planWith(keptBut(said(id, 'unknown'))));
      expect(report.validity, id).toBe('unknown');
      expect(report.text).toBe(`1 item not known yet: "${name}".`);
    }
  });

  it('is not known while an answer is from before the pick-up: it does not speak for what came after it', () => {
    const seen = (at: string) => keptBut().map((each) => (each.item === 'windows-closed' ? { ...each, at } : each));
    const reportOf = (at: string) => conditionsReport(planWith(seen(at)));
    const early = reportOf('2026-05-05T08:59:00-04:00');
    expect(early.validity).toBe('unknown');
    expect(early.text).toBe('1 answer from before the pick-up: inspect again at the pick-up and answer again.');
    expect(early.rows.filter((row) => row.beforePickUp).map(({ item }) => item.id)).toEqual(['windows-closed']);
    expect(reportOf('2026-05-05T09:00:00-04:00').validity).toBe('holds');
    expect(conditionsReport(planWith(keptBut())).validity).toBe('holds');
    const open = conditionsReport(planWith(seen('2026-05-01T08:00:00Z'), { visit: { ...VISIT, end: null } }));
    expect(open.validity).toBe('holds'); // no pick-up is written down: the times are unknown then
  });

  it('holds when every item that applies is kept, or the house has no such thing', () => {
    expect(conditionsReport(planWith(keptBut())).validity).toBe('holds');
    expect(conditionsReport(planWith(keptBut(said('fireplaces-off', 'not-applicable')))).validity).toBe('holds');
  });

  it.each<[string, string]>([
    ['windows-closed', 'not-evaluated'],
    ['fireplaces-off', 'unknown'],
    ['attic-fan-as-usual', 'unknown'],
    ['heat-recovery-as-usual', 'unknown'],
  ])('with a break of %s: %s, even where nothing else is known', (id, whole) => {
    expect(conditionsReport(planWith(keptBut(said(id, 'broken')))).validity).toBe(whole);
    expect(conditionsReport(planWith([said(id, 'broken')])).validity).toBe(whole);
  });

  it('names the break and what it means', () => {
    expect(conditionsReport(planWith(keptBut(said('windows-closed', 'broken')))).text).toBe(
      'Deviation: "Windows closed on every level". This test is invalid: do not use the result. Keep the record and test again.',
    );
    expect(rowFor(planWith([said('combustion-air-open', 'broken')]), 'combustion-air-open')?.text).toContain(
      'Open it at once',
    );
  });

  it('asks for the mitigation system only where there is one, or where it was answered', () => {
    expect(rowFor(planWith([]), 'mitigation-running')).toBeUndefined();
    const mitigated = planWith([], { site: { ...emptyPlan().site, purpose: 'after-mitigation' } });
    expect(rowFor(mitigated, 'mitigation-running')?.state).toBe('unknown');
    expect(rowFor(planWith([said('mitigation-running', 'broken')]), 'mitigation-running')?.effect).toBe(
      'not-evaluated',
    );
  });

  it('takes the worst of two answers: a break that was seen has happened', () => {
    const twice = planWith([said('doors-closed', 'broken'), said('doors-closed', 'kept')]);
    expect(rowFor(twice, 'doors-closed')?.state).toBe('broken');
  });

  it('never holds with a break, of whatever item', () => {
    for (const { id } of CONDITION_ITEMS)
      expect(conditionsReport(planWith(keptBut(said(id, 'broken')))).validity, id).not.toBe('holds');
  });

  it('shows an item that it does not know, and a break of it makes the test invalid', () => {
    const plan = planWith(keptBut(said('garage-door-shut', 'broken')));
    expect(rowFor(plan, 'garage-door-shut')?.item.name).toBe('garage door shut');
    expect(conditionsReport(plan).validity).toBe('not-evaluated');
  });

  it('counts tampering in the log as a break, whatever was answered', () => {
    const plan = withLogEntry(withDetector(planWith(keptBut())), 'd1', { tampering: 'seen' });
    expect(rowFor(plan, 'not-disturbed')?.text).toMatch(
      /^The log has evidence of tampering at K1\. This test is invalid: /,
    );
    expect(conditionsReport(plan).validity).toBe('not-evaluated');
  });

  it('lets nobody who answered "kept" vouch for tampering that only the log has', () => {
    const kept = { ...said('not-disturbed', 'kept'), by: 'R. Alder', at: VISIT.start };
    expect(rowFor(planWith([kept]), kept.item)).toMatchObject({ state: 'kept', by: 'R. Alder', at: VISIT.start });
    const touched = withLogEntry(withDetector(planWith([kept])), 'd1', { tampering: 'seen' });
    expect(rowFor(touched, kept.item)).toMatchObject({ state: 'broken', answered: 'kept', by: '', at: null });
  });
});

describe('"not applicable"', () => {
  // Windows and doors, a temperature, weather and the detectors themselves are nowhere missing.
  it.each(['windows-closed', 'doors-closed', 'heating-cooling-normal', 'no-severe-weather', 'not-disturbed'])(
    'is no answer for what every house has: %s stays unknown and no pass',
    (id) => {
      const plan = planWith(keptBut(said(id, 'not-applicable')));
      expect(rowFor(plan, id)).toMatchObject({ state: 'unknown', answered: 'not-applicable', canBeAbsent: false });
      expect(rowFor(plan, id)?.text).toContain('inspect again');
      expect(conditionsReport(plan).validity).toBe('unknown');
    },
  );

  it.each(CONDITION_ITEMS.filter(({ everyHouse, onlyWith }) => !everyHouse && !onlyWith).map(({ id }) => id))(
    'passes for %s',
    (id) => {
      const plan = planWith(keptBut(said(id, 'not-applicable')));
      expect(rowFor(plan, id)).toMatchObject({ state: 'not-applicable', canBeAbsent: true });
      expect(conditionsReport(plan).validity).toBe('holds');
    },
  );

  // "Not applicable" says that the house has none. Common practice, no published source: a drawing that shows one contradicts it.
  it.each([
    ['fireplaces-off', 'fireplace'],
    ['fireplaces-off', 'wood-stove'],
    ['exhausts-moderate', 'exhaust-fan'],
    ['exhausts-moderate', 'dryer'],
    ['air-handler-not-continuous', 'supply-register'],
    ['air-handler-not-continuous', 'return-grille'],
    ['window-air-conditioner-recirculating', 'window-air-conditioner'],
  ] as const)('is no answer for %s where a %s is drawn, however far from the detectors', (id, kind) => {
    const shape = { circle: { center: [50_000, 0], radius: 300 } } as const;
    const fixtures = [{ id: 'f1', kind, name: '', shape, bottom: 0, top: 600, stream: null }];
    const levels = emptyPlan().levels.map((level) => ({ ...level, fixtures }));
    const plan = planWith(keptBut(said(id, 'not-applicable')), { levels });
    expect(rowFor(plan, id)).toMatchObject({ state: 'unknown', answered: 'not-applicable', canBeAbsent: false });
    expect(conditionsReport(plan).validity).toBe('unknown');
    expect(conditionsReport(planWith(keptBut(said(id, 'kept')), { levels })).validity).toBe('holds');
  });

  it('is no answer for the mitigation system where the plan shows one', () => {
    const none = said('mitigation-running', 'not-applicable');
    expect(rowFor(planWith([none]), none.item)?.state).toBe('not-applicable');
    const shown = planWith(keptBut(none), { visit: { ...VISIT, mitigationOnSince: '2026-04-01T08:00:00-04:00' } });
    expect(rowFor(shown, none.item)?.state).toBe('unknown');
    expect(conditionsReport(shown).validity).toBe('unknown');
  });
});

describe('a break', () => {
  it('that is found before the start can be put right and answered again; after it the test is lost', () => {
    const broken = [said('windows-closed', 'broken')];
    const early = rowFor(planWith(broken, { visit: { ...VISIT, start: null, end: null } }), 'windows-closed');
    expect(early?.text).toBe(
      'Found before the start. Close the windows; the closed hours begin again from then. Start later: once it has been met for 12 h. Answer again once it is corrected.',
    );
    expect(early?.effect).toBe('not-evaluated');
    expect(rowFor(planWith(broken), 'windows-closed')?.text).not.toContain('before the start');
  });
});

describe('the test stands and falls with the house', () => {
  it('a break that says so leaves its results not evaluated, with good times', () => {
    expect(visitValidity(planWith(keptBut()))).toBe('holds');
    const plan = {
      ...withDetector(planWith([said('windows-closed', 'broken')])),
      readings: [{ detector: 'd1', value: 6, unit: 'pCi/L' as const }],
    };
    expect(visitValidity(plan)).toBe('not-evaluated');
    expect(evaluateResults(plan, failing(visitValidity(plan) as 'not-evaluated'))[0]?.next.id).toBe('not-evaluated');
  });

  it('a break that a professional must look at is no pass; one to be noted changes nothing', () => {
    expect(visitValidity(planWith(keptBut(said('fireplaces-off', 'broken'))))).toBe('unknown');
    expect(visitValidity(planWith(keptBut(said('attic-fan-as-usual', 'broken'))))).toBe('unknown');
  });

  it('one item that nobody has answered is no pass either', () => {
    expect(visitValidity(planWith([]))).toBe('unknown');
    expect(visitValidity(planWith(keptBut(said('windows-closed', 'unknown'))))).toBe('unknown');
  });
});

describe('the records', () => {
  it('keep one answer an item in its place, and are read back from the file', () => {
    const first = withCondition(
      planWith([said('doors-closed', 'kept'), said('fireplaces-off', 'kept')]),
      'doors-closed',
      {
        state: 'broken',
        by: 'R. Alder',
      },
    );
    expect(first.conditions.map(({ item, state, by }) => [item, state, by])).toEqual([
      ['doors-closed', 'broken', 'R. Alder'],
      ['fireplaces-off', 'kept', undefined],
    ]);
    const added = withCondition(first, 'windows-closed', { state: 'kept' });
    expect(added.conditions.at(-1)).toEqual(said('windows-closed', 'kept'));
    const read = parsePlan(writePlan(added));
    expect(read.ok && read.plan.conditions).toEqual(added.conditions);
  });

  it('of the log, the weather and the agreement are read back as they were written', () => {
    const step = { at: '2026-05-05T10:00:00-04:00', from: 'R. Alder', to: 'post', note: '' };
    const logged = withHandOver(withLogEntry(withDetector(planWith([])), 'd1', { serial: 'X-1' }), 'd1', step);
    const plan = withAgreement(withWeatherNote(logged, { at: null, text: 'calm' }), { signedBy: 'M. Brook' });
    const read = parsePlan(writePlan(plan));
    expect(read.ok && [read.plan.log, read.plan.weather, read.plan.agreement]).toEqual([
      [
        {
          detector: 'd1',
          serial: 'X-1',
          placedBy: '',
          fetchedBy: '',
          sealed: null,
          tampering: 'unknown',
          note: '',
          photos: [],
          custody: [step],
        },
      ],
      [{ at: null, text: 'calm' }],
      { signedBy: 'M. Brook', at: null, refused: false, note: '' },
    ]);
    expect('weather' in withoutWeatherNote(plan, 0)).toBe(false);
  });

  it('say what is missing: after the pick-up more than before', () => {
    const before = withDetector(planWith([], { visit: { ...VISIT, end: null } }));
    expect(missingRecords(before)).toEqual(['K1 has no serial number yet.', 'Who placed K1 is not recorded.']);
    const placed = withLogEntry(withDetector(planWith([])), 'd1', { serial: 'X-1', placedBy: 'R. Alder' });
    expect(missingRecords(placed)).toEqual([
      'Who picked up K1 is not recorded.',
      'When K1 was sealed is not recorded.',
      'Whether there is evidence of tampering at K1 is not recorded.',
      'The chain of custody of K1 to the laboratory is not recorded.',
    ]);
  });
});
