import { describe, expect, it } from 'vitest';
import type { Level, Plan } from '../../../../geometry/plan/model.ts';
import { requiredItems } from '../../../../src/protocol/required-items/item-states.ts';
import { REQUIRED_ITEMS } from '../../../../src/protocol/required-items/items.ts';
import { notRecorded } from '../../../../src/protocol/required-items/not-recorded.ts';
import { fullReportPlan } from '../../../helpers/full-report-plan.ts';
import { samplePlan } from '../../../helpers/sample-files.ts';

/** Letters of 32 Ill. Adm. Code 422.130(o)(1) that a report must cover (read in training copies). */
const ILLINOIS_LETTERS = [...'ABCDEFGHIJKL'];

const missingOf = (plan: Plan) =>
  requiredItems(plan)
    .filter(({ state }) => state === 'missing')
    .map(({ item }) => item.id);

/** The full plan without one fact, and the item that is missing then. */
const WITHOUT: readonly (readonly [string, (plan: Plan) => Plan])[] = [
  ['results', (plan) => ({ ...plan, readings: plan.readings.slice(1) })],
  ['start-and-end', (plan) => ({ ...plan, visit: { ...plan.visit, end: null } })],
  ['street-address', (plan) => withAddress(plan, { city: ' ' })],
  ['zip', (plan) => withAddress(plan, { zip: '' })],
  ['county', (plan) => withAddress(plan, { county: '' })],
  ['client', (plan) => withReport(plan, { client: { ...emptyParty } })],
  ['house-type', (plan) => withReport(plan, { houseType: '' })],
  [
    'device',
    (plan) => withReport(plan, { device: { description: 'x', maker: 'y', model: '', calibrated: '', expires: '' } }),
  ],
  ['serial-numbers', (plan) => withLog(plan, { serial: '' })],
  ['placed-by', (plan) => withLog(plan, { placedBy: '' })],
  ['picked-up-by', (plan) => withLog(plan, { fetchedBy: '' })],
  ['licenses', (plan) => withReport(plan, { licenses: [] })],
  ['laboratory', (plan) => withReport(plan, { laboratory: { ...(plan.report?.laboratory ?? never()), license: '' } })],
  ['analysis', (plan) => withReport(plan, { laboratory: { ...(plan.report?.laboratory ?? never()), analyzed: null } })],
  ['sketch', (plan) => withLevels(plan, (level) => ({ ...level, lookedFor: [] }))],
  ['mitigation-system', (plan) => withReport(plan, { mitigation: { seen: 'unknown', note: '' } })],
  ['tampering', (plan) => withLog(plan, { tampering: 'unknown' })],
  ['deviations', (plan) => ({ ...plan, conditions: plan.conditions.slice(1) })],
  ['finished-areas', (plan) => withReport(plan, { areas: ' ' })],
  ['vents', (plan) => withReport(plan, { vents: '' })],
  ['forecast', ({ visit: { forecast: _, ...visit }, ...plan }) => ({ ...plan, visit })],
  ['weather', (plan) => ({ ...plan, weather: [{ at: null, text: ' ' }] })],
  ['firm', (plan) => withReport(plan, { firm: { ...emptyParty } })],
];

const emptyParty = { name: '', address: '', telephone: '', email: '', license: '' };

function never(): never {
  throw new Error('The full plan has a laboratory.');
}
function withReport(plan: Plan, change: NonNullable<Plan['report']>): Plan {
  return { ...plan, report: { ...plan.report, ...change } };
}
function withLevels(plan: Plan, change: (level: Level) => Level): Plan {
  return { ...plan, levels: plan.levels.map(change) };
}
function withAddress(plan: Plan, change: object): Plan {
  return withReport(plan, { address: { ...(plan.report?.address ?? never()), ...change } });
}
function withLog(plan: Plan, change: object): Plan {
  return { ...plan, log: (plan.log ?? []).map((entry, i) => (i === 0 ? { ...entry, ...change } : entry)) };
}

describe('what published lists require of a report', () => {
  it('covers every letter of the list of Illinois, each item with a source', () => {
    const cites = REQUIRED_ITEMS.flatMap(({ sources }) => sources.map(({ cite }) => cite));
    for (const letter of ILLINOIS_LETTERS) expect(cites).toContain(`32 Ill. Adm. Code 422.130(o)(1)(${letter})`);
    for (const { sources } of REQUIRED_ITEMS) expect(sources.length).toBeGreaterThan(0);
    expect(new Set(REQUIRED_ITEMS.map(({ id }) => id)).size).toBe(REQUIRED_ITEMS.length);
  });

  it('is all there in a full job', () => {
    expect(missingOf(fullReportPlan())).toEqual([]);
  });

  it.each(WITHOUT)('says that %s is missing where that is removed, and nothing else', (id, without) => {
    const missing = missingOf(without(fullReportPlan()));
    expect(missing).toContain(id);
    // Of a person who is not known the license is not known either; no other item may fall with one.
    const withIt = id === 'placed-by' || id === 'picked-up-by' ? ['licenses'] : [];
    expect(missing.filter((each) => each !== id)).toEqual(withIt);
  });

  it('says that the use of a room is missing, of which the list asks whether it is finished', () => {
    expect(missingOf(withLevels(fullReportPlan(), (level) => ({ ...level, rooms: [] })))).toEqual(['finished-areas']);
  });

  it('takes rooms that are labeled unfinished for the answer which ones are', () => {
    const plan = withReport(fullReportPlan(), { areas: '' });
    const unfinished = withLevels(plan, (level) => ({
      ...level,
      rooms: level.rooms.map((room) => ({ ...room, use: 'unfinished' as const })),
    }));
    expect(missingOf(unfinished)).toEqual([]);
  });

  // 32 Ill. Adm. Code 422.130(o)(1)(D): a number that two devices have names neither.
  it('takes a serial number that stands twice for none, whatever spaces and letter case', () => {
    const plan = withLog(fullReportPlan(), { serial: 'CX-101' });
    const spaced = withLog(fullReportPlan(), { serial: ' cx -101' });
    for (const each of [plan, spaced]) {
      const item = requiredItems(each).find(({ item: { id } }) => id === 'serial-numbers');
      expect(item).toMatchObject({
        state: 'missing',
        lacking: ['A1 (its number stands twice)', 'A2 (its number stands twice)'],
      });
      expect(notRecorded(each).named).toContain('a result cannot be tied to a device: A1 (its number stands twice)');
    }
  });

  it('takes the serial number of a blank or spike for none of a detector', () => {
    const blank = { id: 'q1', kind: 'blank', at: null, serial: 'CX-100', by: '', value: 0, unit: 'pCi/L' } as const;
    const quality = [{ ...blank, reference: null, detectionLimit: null, note: '' }];
    expect(missingOf({ ...fullReportPlan(), quality })).toEqual(['serial-numbers']);
  });

  // 32 Ill. Adm. Code 422.130(o)(1)(K): severe weather of the test.
  it('takes no weather from before the start for that of the test', () => {
    const full = fullReportPlan();
    const noted = (at: string | null): Plan => ({ ...full, weather: [{ at, text: 'Gusts and hail' }] });
    expect(missingOf(noted('2026-03-07T17:59:00-05:00'))).toEqual(['weather']);
    expect(missingOf(noted('2026-03-07T18:00:00-05:00'))).toEqual([]);
    expect(missingOf(noted('2026-03-10T09:10:00-04:00'))).toEqual([]);
    expect(missingOf(noted(null))).toEqual([]);
  });

  // 32 Ill. Adm. Code 422.130(o)(1)(E): the license number of each of the two.
  it('takes no license of one person for that of another who is not known', () => {
    const item = requiredItems(withLog(fullReportPlan(), { fetchedBy: '' })).find(
      (each) => each.item.id === 'licenses',
    );
    expect(item).toMatchObject({ state: 'missing', lacking: ['who picked up A1'] });
  });

  // 32 Ill. Adm. Code 422.130(b)(1)(D): of a test of less than 96 h the forecast is looked up and documented.
  it('asks for the forecast of a test of less than 96 h, with time, source, wind and storms', () => {
    const full = fullReportPlan();
    const known = full.visit.forecast ?? never();
    const told = (forecast: typeof known) => ({ ...full, visit: { ...full.visit, forecast } });
    const lackingOf = (plan: Plan) => requiredItems(plan).find(({ item }) => item.id === 'forecast');
    expect(lackingOf(told({ ...known, at: null, source: ' ', sustained: null, storm: null }))).toMatchObject({
      state: 'missing',
      lacking: ['time', 'source', 'wind', 'storms'],
    });
    const long = { ...full, visit: { ...full.visit, end: '2026-03-12T18:00:00-04:00' } };
    expect(lackingOf(long)?.state).toBe('not-applicable');
  });

  // 32 Ill. Adm. Code 422.130(o)(1)(L): the drawing shows the windows and doors of the building.
  it('takes no door between two rooms for the windows and doors of the building', () => {
    const sale = samplePlan('06-sale-report');
    const inside = withLevels(sale, (level) => ({
      ...level,
      openings: level.openings.filter(({ wall }) => wall === 'w5'),
    }));
    expect(inside.levels[0]?.openings).toHaveLength(1);
    expect(missingOf(inside)).toEqual(['sketch']);
    const looked = withLevels(inside, (level) => ({
      ...level,
      lookedFor: [...(level.lookedFor ?? []), 'outside-opening' as const],
    }));
    expect(missingOf(looked)).toEqual([]);
  });

  it('asks for the firm while nobody has answered why the house is tested', () => {
    const full = withReport(fullReportPlan(), { firm: { ...emptyParty } });
    const site = { ...full.site, purpose: 'own-household' as const };
    expect(missingOf({ ...full, site })).toEqual([]);
    expect(missingOf({ ...full, site: { ...site, purposeAnswered: false } })).toEqual(['firm']);
  });

  it('asks of a monitor for its calibration and its hourly readings, and of no laboratory', () => {
    const full = fullReportPlan();
    const monitor: Plan = { ...full, visit: { ...full.visit, device: 'monitor' } };
    expect(missingOf(monitor)).toEqual(['calibration', 'hourly-readings']);
    const device = { ...(full.report?.device ?? never()), calibrated: '2026-02-02', hourly: 'On request' };
    expect(missingOf(withReport(monitor, { device }))).toEqual([]);
  });

  it('names each item of an empty job as missing or not applicable, none in silence', () => {
    const items = requiredItems({ ...samplePlan('01-plain-basement'), report: {} });
    expect(items.map(({ item }) => item.id)).toEqual(REQUIRED_ITEMS.map(({ id }) => id));
    for (const { state, lacking } of items) expect(lacking.length > 0).toBe(state === 'missing');
    expect(items.filter(({ state }) => state === 'present').map(({ item }) => item.id)).toEqual([
      'advisories',
      'locations',
      'sketch',
    ]);
  });
});
