import type { Plan } from '../../../geometry/plan/model.ts';
import { listed } from '../../../geometry/words.ts';
import { asNumber, decimalText } from './exact.ts';
import type { SetReport, TestStanding } from './judge.ts';
import { radonBoth } from './radon.ts';

/** What a single short test does not mean: shown beside every result. */
export const RESULT_CAUTIONS: readonly string[] = [
  'A short test is not a year: radon changes with weather, season and use of the house.',
  'There is no safe level; below the action level the risk is smaller, not gone.',
  'A result of this room says little about another one.',
];

/** What the standing of a test means for all its results; empty where it holds. */
export const STANDING_WORDS: Readonly<Record<TestStanding, string>> = {
  holds: '',
  'not-evaluated': 'The times or the house of this test do not hold: its results are kept and not evaluated.',
  unknown: 'Not all of the times and of the closed house is written down: these results are used under that doubt.',
};

const AGREEMENT_WORDS: Readonly<Record<SetReport['agreement'], string>> = {
  'in-control': 'The two results agree.',
  warning: 'The two results are farther apart than they should be: a warning. Look for the cause.',
  'out-of-control': 'The two results are too far apart: out of control. Find the cause before going on.',
  'straddles-by-two':
    'One result is at the action level or above, the other below, and the higher is at least twice the lower.',
  single: 'A single result, with nothing beside it to hold it against.',
};

/** The location in words: "A1 and A2, side by side". */
export function setName({ set }: SetReport): string {
  const names = set.detectors.map(({ label, id }) => label.trim() || id);
  return names.length > 1 ? `${listed(names)}, side by side` : (names[0] ?? '');
}

/** What the results of a location come to, in sentences. */
export function describeSet(plan: Plan, report: SetReport): readonly string[] {
  const { set, meanRounded, mean, rpd, agreement, precision, straddleDisputed, withEarlier } = report;
  const unit = plan.display.radon;
  const values = report.values.map((value) => radonBoth(value, unit));
  const lines = [`${values.length === 1 ? 'Result' : 'Results'}: ${listed(values)}.`];
  if (set.twice.length > 0) {
    lines.push(
      `${listed(set.twice.map(({ label, id }) => label || id))} has more than one result. Which counts is not known.`,
    );
  }
  if (set.apart) {
    lines.push('Marked as a pair, and farther than 8 in apart: two locations, which are never averaged.');
  }
  // An average that must not be used is not printed for somebody to use.
  if (mean && meanRounded && values.length > 1 && agreement !== 'straddles-by-two') {
    lines.push(`Average: ${decimalText(mean, 2)}, reported as ${radonBoth(meanRounded, unit)}.`);
  }
  if (rpd) lines.push(`Relative percent difference: ${decimalText(rpd, 1)} %.`);
  lines.push(AGREEMENT_WORDS[agreement]);
  if (precision?.otherwise && agreement !== 'straddles-by-two') {
    lines.push(
      `It lies exactly on a limit: read as "more than", it would be ${precision.otherwise.replaceAll('-', ' ')}.`,
    );
  }
  if (straddleDisputed)
    lines.push('The higher is exactly twice the lower: one published reading would still use the average.');
  if (withEarlier) lines.push(`With the earlier short-term test: ${radonBoth(withEarlier, unit)} on average.`);
  lines.push(report.next.says);
  const conflict = conflictOf(report);
  if (conflict) lines.push(`Texts differ: ${conflict}`);
  return lines;
}

/** Where another published text says otherwise of this very result; empty where none is known to. */
function conflictOf({ agreement, straddleDisputed, next }: SetReport): string {
  return agreement === 'straddles-by-two' && !straddleDisputed ? '' : next.conflict;
}

/** One location as the command line prints it. Concentrations in pCi/L, numbers nearest to the exact ones. */
export function setDocument(report: SetReport) {
  const { set, mean, meanRounded, rpd, agreement, precision, next, withEarlier } = report;
  const number = (value: SetReport['mean']) => value && asNumber(value);
  return {
    pair: set.pair,
    detectors: set.detectors.map(({ id }) => id),
    level: set.level.id,
    values: report.values.map(asNumber),
    mean: number(mean),
    meanRounded: number(meanRounded),
    rpd: number(rpd),
    agreement,
    nextStep: next.says,
    step: next.id,
    conflict: conflictOf(report),
    otherReading: precision?.otherwise ?? null,
    withEarlier: number(withEarlier),
    separateLocations: set.apart,
    undecided: set.twice.map(({ id }) => id),
    sources: next.sources.map(({ cite, mark }) => ({ cite, mark })),
  };
}

/** Whether nothing about the location is open: neither a test that does not hold, nor results that cannot be used. */
export function isSettled({ agreement, next, mean }: SetReport): boolean {
  const open = ['not-evaluated', 'undecided', 'wait-for-results'].includes(next.id);
  return !open && mean !== null && agreement !== 'straddles-by-two' && agreement !== 'out-of-control';
}
