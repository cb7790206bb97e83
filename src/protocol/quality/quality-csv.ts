import { decimalText } from '../results/exact.ts';
import type { ControlChart } from './control-charts.ts';
import type { CheckRecord, MonthRow } from './quality-book.ts';

/** Returns the table of all pairs with their control limits. */
export function chartRows(charts: readonly ControlChart[]): readonly (readonly (string | number)[])[] {
  const head = [
    'month',
    'where',
    'device',
    'first pCi/L',
    'second pCi/L',
    'mean pCi/L',
    'statistic',
    'value',
    'warning',
    'control',
    'verdict',
    'ends a run',
  ];
  const rows = charts.flatMap(({ band, points, warning, control }) =>
    points.map(({ pair, value, verdict, endsRun }) => [
      pair.month,
      pair.where,
      pair.device,
      ...pair.values.map((each) => decimalText(each, 2)),
      decimalText(pair.mean, 2),
      band.of === 'percent' ? 'relative percent difference' : 'difference pCi/L',
      decimalText(value, 2),
      warning,
      control ?? '',
      verdict,
      endsRun ? 'yes' : 'no',
    ]),
  );
  return [head, ...rows];
}

/** Returns the table of monthly counts. */
export function monthTable(months: readonly MonthRow[]): readonly (readonly (string | number)[])[] {
  const head = [
    'month',
    'device',
    'measurements',
    'pairs',
    'pairs outstanding',
    'blanks',
    'blanks outstanding',
    'spikes',
    'spikes outstanding',
  ];
  return [
    head,
    ...months.map(({ month, device, measurements, duplicates, blanks, spikes }) => [
      month,
      device,
      measurements,
      duplicates.done,
      duplicates.required,
      blanks.done,
      blanks.required,
      spikes.done,
      spikes.required,
    ]),
  ];
}

/** Returns the table of blanks and spikes. */
export function checkTable(checks: readonly CheckRecord[]): readonly (readonly (string | number)[])[] {
  const head = ['month', 'kind', 'serial', 'value', 'unit', 'reference', 'error %', 'verdict'];
  return [
    head,
    ...checks.map(({ check, month, error, verdict }) => [
      month,
      check.kind,
      check.serial,
      check.value,
      check.unit,
      check.reference ?? '',
      error ? decimalText(error, 1) : '',
      verdict,
    ]),
  ];
}
