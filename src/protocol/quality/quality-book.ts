import { listed } from '../../../geometry/messages/index.ts';
import type { Plan } from '../../../geometry/plan/model.ts';
import type { QualityCheck } from '../../../geometry/plan/test-record.ts';
import { recordedStart } from '../custody/placed.ts';
import { detectorLabel } from '../detector-label.ts';
import { evaluateResults } from '../results/evaluate-results.ts';
import { compare, dividedBy, type Exact, exact, exactOf, minus, times } from '../results/exact.ts';
import { type Location, locations } from '../results/locations.ts';
import { bandOf, type PrecisionBand } from '../results/precision.ts';
import { type Ms, msOf, wallTime } from '../timing/clock.ts';
import { testStateFrom } from '../validity/validity.ts';
import { BLANKS, DUPLICATES, type QcRequirement, requiredInMonth, SPIKE_LIMITS, SPIKES } from './requirements.ts';

/**
 * One collocated pair in the quality book; of three or more detectors side by side the two results that differ most. Concentrations in
 * pCi/L, exact.
 */
export interface PairRecord {
  /** Title of the plan and labels of the detectors. */
  readonly where: string;
  readonly at: Ms | null;
  readonly month: string;
  readonly device: string;
  readonly values: readonly [Exact, Exact];
  /** Of all results of the location. */
  readonly mean: Exact;
  readonly rpd: Exact | null;
  readonly band: PrecisionBand;
  /** Both results are below the detection limit. */
  readonly below: boolean;
}

/** A blank or spike and its evaluation. */
export interface CheckRecord {
  readonly check: QualityCheck;
  readonly where: string;
  readonly month: string;
  readonly device: string;
  /** Relative percent error of a spike; null for a blank and for a spike without a reference value. */
  readonly error: Exact | null;
  readonly verdict: 'clear' | 'warning' | 'out-of-control' | 'unknown';
}

export interface QcCount {
  readonly done: number;
  readonly required: number;
}

/** Returns how many are still to be done. */
export const outstanding = ({ done, required }: QcCount): number => Math.max(0, required - done);

/** Counts of one month and one kind of device. */
interface MonthRow {
  /** "2026-03"; "undated" without a date. */
  readonly month: string;
  readonly device: string;
  /** Locations with a result. */
  readonly measurements: number;
  /** Locations of tests that were placed and have no result yet. What they require has to be placed with them, so that it counts from then on. */
  readonly awaited: number;
  readonly duplicates: QcCount;
  readonly blanks: QcCount;
  readonly spikes: QcCount;
}

interface YearRow {
  readonly year: string;
  readonly device: string;
  readonly spikes: QcCount;
}

export interface QualityBook {
  readonly months: readonly MonthRow[];
  readonly years: readonly YearRow[];
  /** In the order of their dates. */
  readonly pairs: readonly PairRecord[];
  readonly checks: readonly CheckRecord[];
  /** Number of plans that record the same test as another plan, by serial numbers, start and results: each test is counted once. */
  readonly copies: number;
}

export const UNDATED = 'undated';

/**
 * Returns the quality book of many plans: measurements, pairs, blanks and spikes, done and required by month. A copy of a test is not
 * counted.
 */
export function qualityBook(all: readonly Plan[]): QualityBook {
  const plans = withoutCopies(all);
  const measured = plans.flatMap(measurementsOf);
  const checks = checksOnce(all).sort((a, b) => (msOf(a.check.at) ?? 0) - (msOf(b.check.at) ?? 0));
  const pairs = measured.flatMap(({ pair }) => (pair ? [pair] : []));
  return {
    months: monthRows(measured, checks),
    years: yearRows(measured, checks),
    pairs: pairs.sort((a, b) => (a.at ?? 0) - (b.at ?? 0)),
    checks,
    copies: all.length - plans.length,
  };
}

function withoutCopies(all: readonly Plan[]): readonly Plan[] {
  const known = new Set<string>();
  return all.filter((plan) => {
    const key = testKey(plan);
    if (key === null) return true;
    const isNew = !known.has(key);
    known.add(key);
    return isNew;
  });
}

/**
 * Key that no two tests share: start and serial numbers with results; null if a device with a result has no number. Blanks and spikes are
 * not in it: a copy to which one was added is the same test.
 */
function testKey({ readings, log = [], visit }: Plan): string | null {
  const serialOf = (id: string) => log.find(({ detector }) => detector === id)?.serial.trim() ?? '';
  const results = readings.map(({ detector, value, unit }) => [serialOf(detector), value, unit]);
  const isTold = visit.start !== null && results.length > 0 && results.every(([serial]) => serial !== '');
  return isTold ? JSON.stringify([msOf(visit.start), results]) : null;
}

interface Measurement {
  /** Whether it was placed and has no result yet. */
  readonly isAwaited: boolean;
  readonly month: string;
  readonly device: string;
  readonly pair: PairRecord | null;
}

/** The precision of a pair does not depend on the validity of its test. */
const ANY_STATE = testStateFrom([]);

function measurementsOf(plan: Plan): readonly Measurement[] {
  const at = msOf(plan.visit.end) ?? msOf(plan.visit.start);
  const month = monthOf(at, plan.site.timeZone);
  const device = deviceOf(plan);
  const measured = evaluateResults(plan, ANY_STATE).map(({ set, values, mean, rpd }): Measurement => {
    // Without a mean, a detector has two results: which one counts is not known.
    const compared = mean && comparedOf(values);
    if (!mean || !compared) return { month, device, isAwaited: false, pair: null };
    const withResult = set.detectors.filter(({ id }) => set.readings.some(({ detector }) => detector === id));
    const labels = listed(withResult.map(detectorLabel));
    const where = [plan.title, labels].filter(Boolean).join(', ') + (values.length > 2 ? MOST_APART : '');
    const below = set.readings.every(({ belowLimit }) => belowLimit);
    const pair = { where, at, month, device, values: compared, mean, rpd, band: bandOf(mean), below };
    return { month, device, isAwaited: false, pair };
  });
  return [...measured, ...awaitedAt(plan).map(() => ({ month, device, isAwaited: true, pair: null }))];
}

/** Returns the locations without a result of a test that was placed; none of one that is only planned. */
function awaitedAt(plan: Plan): readonly Location[] {
  if (plan.visit.end === null && recordedStart(plan.visit) === null) return [];
  const hasResult = new Set(plan.readings.map(({ detector }) => detector));
  return locations(plan).filter(({ detectors }) => detectors.every(({ id }) => !hasResult.has(id)));
}

const MOST_APART = ': the two that differ most';

/** Returns a pair as it is, and the lowest and highest of more, as Results compares them; null for a single result. */
function comparedOf(values: readonly Exact[]): readonly [Exact, Exact] | null {
  const inOrder = values.length > 2 ? [...values].sort(compare) : values;
  const [first, last] = [inOrder[0], inOrder.at(-1)];
  return values.length > 1 && first && last ? [first, last] : null;
}

/** The kind of kit, which a book counts separately; kits without a kind are counted as one kind. */
const deviceOf = ({ kit }: Plan): string => kit.kind.trim() || 'kind not entered';

function monthOf(at: Ms | null, zone: string): string {
  if (at === null) return UNDATED;
  const { year, month } = wallTime(at, zone);
  return `${year}-${String(month).padStart(2, '0')}`;
}

/**
 * Returns the blanks and spikes of all plans. One that a copy of a plan holds too counts once, as does one with its serial number in
 * several plans: a plan that is begun as a copy of the last one has its spikes, and nothing required is met by them.
 */
function checksOnce(all: readonly Plan[]): CheckRecord[] {
  const known = new Set<string>();
  return all.flatMap((plan) => {
    const test = testKey(plan);
    return checksOf(plan).filter((record) => {
      const key = checkKey(record, test);
      const isNew = key === null || !known.has(key);
      if (key !== null) known.add(key);
      return isNew;
    });
  });
}

/** Key that no two blanks or spikes share; null for one without a serial number in a plan without a key. */
function checkKey({ check, device }: CheckRecord, test: string | null): string | null {
  const { kind, at, serial, value, unit, reference, detectionLimit } = check;
  const figures = [value, unit, reference, detectionLimit];
  if (serial.trim() !== '') return JSON.stringify([device, kind, serial.trim(), msOf(at), figures]);
  return test === null ? null : JSON.stringify([test, check]);
}

function checksOf(plan: Plan): readonly CheckRecord[] {
  return (plan.quality ?? []).map((check): CheckRecord => {
    const month = monthOf(msOf(check.at), plan.site.timeZone);
    const error = spikeError(check);
    return { check, where: plan.title, month, device: deviceOf(plan), error, verdict: verdictOf(check, error) };
  });
}

/** Returns (measured - reference) / reference, percent; null for a blank, or if there is no reference. */
function spikeError({ kind, value, reference }: QualityCheck): Exact | null {
  if (kind === 'blank' || !reference) return null;
  return times(dividedBy(minus(exactOf(value), exactOf(reference)), exactOf(reference)), exact(100n));
}

function verdictOf({ kind, value, detectionLimit }: QualityCheck, error: Exact | null): CheckRecord['verdict'] {
  if (kind === 'blank') {
    if (detectionLimit === null) return value === 0 ? 'clear' : 'unknown';
    return value <= detectionLimit ? 'clear' : 'out-of-control';
  }
  if (!error) return 'unknown';
  const beyond = (limit: number) => compare(error, exactOf(limit)) > 0 || compare(error, exactOf(-limit)) < 0;
  if (beyond(SPIKE_LIMITS.control)) return 'out-of-control';
  return beyond(SPIKE_LIMITS.warning) ? 'warning' : 'clear';
}

function monthRows(measured: readonly Measurement[], checks: readonly CheckRecord[]): readonly MonthRow[] {
  const keys = new Set([...measured, ...checks].map(({ month, device }) => `${month}\n${device}`));
  return [...keys].sort().map((key): MonthRow => {
    const [month = '', device = ''] = key.split('\n');
    const here = <T extends { month: string; device: string }>(list: readonly T[]) =>
      list.filter((each) => each.month === month && each.device === device);
    const all = here(measured);
    const awaited = all.filter(({ isAwaited }) => isAwaited).length;
    const count = (requirement: QcRequirement, done: number): QcCount => ({
      done,
      required: requiredInMonth(requirement, all.length),
    });
    const of = (kind: QualityCheck['kind']) => here(checks).filter(({ check }) => check.kind === kind).length;
    return {
      month,
      device,
      measurements: all.length - awaited,
      awaited,
      duplicates: count(DUPLICATES, all.filter(({ pair }) => pair).length),
      blanks: count(BLANKS, of('blank')),
      spikes: count(SPIKES, of('spike')),
    };
  });
}

/** Spikes have an annual minimum, which applies in full to a year with any measurement. */
function yearRows(measured: readonly Measurement[], checks: readonly CheckRecord[]): readonly YearRow[] {
  const dated = measured.filter(({ month }) => month !== UNDATED);
  const keys = new Set(dated.map(({ month, device }) => `${month.slice(0, 4)}\n${device}`));
  return [...keys].sort().map((key): YearRow => {
    const [year = '', device = ''] = key.split('\n');
    const done = checks.filter(
      (each) => each.check.kind === 'spike' && each.device === device && each.month.startsWith(year),
    );
    return { year, device, spikes: { done: done.length, required: SPIKES.leastAYear } };
  });
}
