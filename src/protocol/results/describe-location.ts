import { listed } from '../../../geometry/messages/index.ts';
import type { Plan } from '../../../geometry/plan/model.ts';
import type { EarlierResult } from '../../../geometry/plan/test-record.ts';
import { detectorLabel } from '../detector-label.ts';
import { describePair } from './describe-pair.ts';
import { mayLower } from './earlier-results.ts';
import { asNumber, compare, decimalText, type Exact, rounded } from './exact.ts';
import type { LocationReport } from './location-report.ts';
import { NEXT_STEP_SOURCES } from './next-step-sources.ts';
import { amountsInUnit, enteredText, otherUnitText, radonInBothUnits, radonText } from './radon.ts';

/** Limits of a single short-term test, shown beside every result. */
export const RESULT_CAUTIONS: readonly string[] = [
  'A short-term test does not show the yearly average: radon changes with weather, season and use of the house.',
  'There is no safe level; below the action level the risk is smaller, not gone.',
  'The result of this room says little about another room.',
];

/** The evaluation of one location in sentences, part by part. */
export interface LocationTexts {
  /** Results as reported, reasons why they have no single value, and the average. */
  readonly results: readonly string[];
  /** Agreement of the results of a pair. */
  readonly pair: readonly string[];
  readonly earlier: readonly string[];
  readonly step: string;
  /** Another published text that differs; empty if none is known. */
  readonly conflict: string;
}

/** Returns the sentences about a location. Without the average, the pair and earlier tests if the location is not valid. */
export function locationTexts(plan: Plan, report: LocationReport): LocationTexts {
  const evaluated = report.state.validity === 'holds';
  const inUnit = (sentence: string) => amountsInUnit(plan.display.radon, sentence);
  return {
    results: [...resultWords(report), ...(evaluated ? averageWords(plan, report) : [])],
    pair: evaluated ? describePair(report).map(inUnit) : [],
    earlier: evaluated ? earlierWords(plan, report) : [],
    step: inUnit(report.next.text),
    conflict: inUnit(conflictOf(report)),
  };
}

/** Returns all sentences about a location in order. */
export function describeLocation(plan: Plan, report: LocationReport): readonly string[] {
  const { results, pair, earlier, step, conflict } = locationTexts(plan, report);
  return [...results, ...pair, ...earlier, step, ...(conflict ? [`Texts differ: ${conflict}`] : [])];
}

function resultWords({ set }: LocationReport): readonly string[] {
  const values = set.recorded.map(
    (reading) => `${reading.belowLimit ? 'below ' : ''}${enteredText(reading)} (${otherUnitText(reading)})`,
  );
  const lines = [`${values.length === 1 ? 'Result' : 'Results'}: ${listed(values)}.`];
  if (set.duplicated.length > 0) {
    lines.push(
      `${listed(set.duplicated.map(detectorLabel))} has more than one result. Which one is right is not known.`,
    );
  }
  if (set.apart) {
    lines.push('Marked as a pair, and farther than 8 in (20.3 cm) apart: two locations, which are never averaged.');
  }
  return lines;
}

function averageWords(
  plan: Plan,
  { values, mean, meanRounded, pairStatus, atMost }: LocationReport,
): readonly string[] {
  const lines = atMost ? [BELOW_LIMIT_NOTE] : [];
  // An average that must not be used is not printed.
  if (!mean || !meanRounded || values.length < 2 || pairStatus === 'straddles-by-two') return lines;
  const most = atMost ? 'at most ' : '';
  return [
    ...lines,
    `Average: ${most}${meanText(mean)} pCi/L, reported as ${most}${radonInBothUnits(mean, plan.display.radon)}.`,
  ];
}

/** Returns a mean with at least two decimals, and enough that rounding the text gives the reported value: 0.646, reported as 0.6. */
function meanText(mean: Exact): string {
  const decimals = [2, 3, 4, 5].find((each) => compare(rounded(rounded(mean, each), 1), rounded(mean, 1)) === 0);
  return decimalText(mean, decimals ?? 6);
}

/** How a result below the detection limit counts. Common practice, no published source: the strict reading is the highest possible value. */
export const BELOW_LIMIT_NOTE =
  'Below the detection limit: the laboratory could not tell this from zero. It counts as the limit itself, the most that it can be.';

function earlierWords(plan: Plan, report: LocationReport): readonly string[] {
  const { site, display, earlier: all = [] } = plan;
  const { earlier, withEarlier } = report;
  const { shortTerm, longTerm, withoutLocation } = earlier;
  const describeEarlier = (kind: string, result: EarlierResult) =>
    `Earlier ${kind} test here: ${enteredText(result)} (${otherUnitText(result)}).`;
  const lines: string[] = [];
  if (shortTerm) lines.push(describeEarlier('short-term', shortTerm));
  if (withEarlier) {
    lines.push(`With it: ${radonText(withEarlier, display.radon)} on average.`);
  } else if (shortTerm && site.purpose === 'after-mitigation') {
    lines.push('After mitigation it is not averaged in: it measured the house before the system.');
  } else if (shortTerm && !mayLower(plan, shortTerm) && report.pairStatus !== 'straddles-by-two') {
    lines.push('It does not lower this result: only a test with a day in the 2 years before this one does.');
  }
  if (longTerm) lines.push(describeEarlier('long-term', longTerm));
  const counted = [shortTerm, longTerm].filter((each) => each !== null).length;
  const here = all.filter(({ detector }) => report.set.detectors.some(({ id }) => id === detector)).length;
  if (here > counted) lines.push('Of several earlier tests of one kind here the highest counts.');
  if (withoutLocation > 0) {
    lines.push(
      'An earlier test does not say where it was. Separate locations are never averaged, so it is not used for any.',
    );
  }
  return lines;
}

function conflictOf({ pairStatus, straddleDisputed, next }: LocationReport): string {
  return pairStatus === 'straddles-by-two' && !straddleDisputed && next.id === 'retest-straddles'
    ? ''
    : NEXT_STEP_SOURCES[next.id].conflict;
}

/** Returns the JSON of one location for the command line. Concentrations in pCi/L, as the nearest doubles. */
export function locationJson(report: LocationReport) {
  const { set, mean, meanRounded, rpd, pairStatus, precision, next, withEarlier } = report;
  const number = (value: LocationReport['mean']) => value && asNumber(value);
  return {
    pair: set.pair,
    detectors: set.detectors.map(({ id }) => id),
    level: set.level.id,
    values: report.values.map(asNumber),
    mean: number(mean),
    meanRounded: number(meanRounded),
    rpd: number(rpd),
    agreement: pairStatus,
    nextStep: next.text,
    step: next.id,
    standing: report.state.validity,
    conflict: conflictOf(report),
    otherReading: precision?.otherReading ?? null,
    withEarlier: number(withEarlier),
    atMost: report.atMost,
    separateLocations: set.apart,
    undecided: set.duplicated.map(({ id }) => id),
    sources: NEXT_STEP_SOURCES[next.id].sources.map(({ cite, mark }) => ({ cite, mark })),
  };
}
