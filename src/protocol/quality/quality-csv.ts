import { decimalText } from '../results/exact.ts';
import type { ControlChart } from './control-charts.ts';
import { type CheckRecord, outstanding, type QcCount, type QualityBook } from './quality-book.ts';

/** Returns the table of all pairs with their control limits. */
export function chartRows(charts: readonly ControlChart[]): readonly Row[] {
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

/** Returns the table of monthly counts and, after an empty row, that of the spikes of each year. */
export function countTable({ months, years }: Pick<QualityBook, 'months' | 'years'>): readonly Row[] {
  return [
    [
      'month',
      'device',
      'measurements',
      'awaiting results',
      ...countHeads('pairs'),
      ...countHeads('blanks'),
      ...countHeads('spikes'),
    ],
    ...months.map(({ month, device, measurements, awaited, duplicates, blanks, spikes }) => [
      month,
      device,
      measurements,
      awaited,
      ...countCells(duplicates),
      ...countCells(blanks),
      ...countCells(spikes),
    ]),
    [],
    ['year', 'device', ...countHeads('spikes')],
    ...years.map(({ year, device, spikes }) => [year, device, ...countCells(spikes)]),
  ];
}

type Row = readonly (string | number)[];

const countHeads = (name: string): Row => [name, `${name} required`, `${name} outstanding`];
const countCells = (count: QcCount): Row => [count.done, count.required, outstanding(count)];

/** Returns the table of blanks and spikes. */
export function checkTable(checks: readonly CheckRecord[]): readonly Row[] {
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
