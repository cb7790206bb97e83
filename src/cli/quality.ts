import { CAUTIONS, counted } from '../../geometry/messages/index.ts';
import { csv } from '../protocol/csv.ts';
import { type ControlChart, controlCharts } from '../protocol/quality/control-charts.ts';
import { chartName, chartStatus, describeCopies, describeLimits } from '../protocol/quality/describe-quality.ts';
import { outstanding, type QcCount, type QualityBook, qualityBook } from '../protocol/quality/quality-book.ts';
import { chartRows, checkTable, countTable } from '../protocol/quality/quality-csv.ts';
import { BLANKS, DUPLICATES, SPIKES } from '../protocol/quality/requirements.ts';
import { asNumber } from '../protocol/results/exact.ts';
import type { CliCommand } from './call.ts';

/** `quality FILE…`: the quality book of several plans. */
export const quality: CliCommand = {
  name: 'quality',
  synopsis: 'FILE... [--csv]',
  summary: 'over many plans: pairs, blanks and spikes completed, required and outstanding by month, control charts',
  takesManyFiles: true,
  options: [],
  flags: ['csv'],
  run: ({ plans, json, flags }) => {
    const book = qualityBook(plans);
    const charts = controlCharts(book.pairs);
    const code = isInOrder(book, charts) ? 0 : 1;
    if (flags.has('csv') && !json) {
      const tables = [countTable(book), chartRows(charts), checkTable(book.checks)];
      return { text: tables.map(csv).join('\r\n'), isData: true, code };
    }
    return { text: json ? `${JSON.stringify(asJson(book, charts), null, 2)}\n` : asText(book, charts), code };
  },
};

/** Whether no pair, blank or spike is out of control, and no blank or spike is unknown. */
function isInOrder({ checks }: QualityBook, charts: readonly ControlChart[]): boolean {
  const pairs = charts.every(({ points }) =>
    points.every(({ verdict, endsRun }) => verdict !== 'out-of-control' && !endsRun),
  );
  return pairs && checks.every(({ verdict }) => verdict === 'clear' || verdict === 'warning');
}

function asJson({ months, years, checks, copies }: QualityBook, charts: readonly ControlChart[]) {
  return {
    copies,
    months: months.map(({ duplicates, blanks, spikes, ...month }) => ({
      ...month,
      duplicates: countAsJson(duplicates),
      blanks: countAsJson(blanks),
      spikes: countAsJson(spikes),
    })),
    years: years.map(({ spikes, ...year }) => ({ ...year, spikes: countAsJson(spikes) })),
    charts: charts.map(({ device, band, points, warning, control, own, flags }) => ({
      device,
      from: band.from,
      below: band.below,
      statistic: band.of === 'percent' ? 'rpd' : 'difference',
      warning,
      control,
      ownLimits: own,
      rows: points.map(({ pair, value, verdict, endsRun }) => ({
        where: pair.where,
        month: pair.month,
        device: pair.device,
        values: pair.values.map(asNumber),
        mean: asNumber(pair.mean),
        value: asNumber(value),
        verdict,
        endsRun,
      })),
      flags,
    })),
    checks: checks.map(({ check, where, month, device, error, verdict }) => ({
      ...check,
      where,
      month,
      device,
      error: error && asNumber(error),
      verdict,
    })),
    cautions: CAUTIONS,
  };
}

/** In the JSON document the required number is `owed`: scripts read it. */
const countAsJson = ({ done, required }: QcCount) => ({ done, owed: required });

function countText(count: QcCount, name: string): string {
  const open = outstanding(count);
  return `${name} ${count.done} of ${count.required}${open > 0 ? ` (${open} outstanding)` : ''}`;
}

function asText(book: QualityBook, charts: readonly ControlChart[]): string {
  const { months, years, checks, copies } = book;
  const lines = [
    ...(copies > 0 ? [describeCopies(book)] : []),
    ...months.map(
      ({ month, device, measurements, awaited, duplicates, blanks, spikes }) =>
        `${month}, ${device}: ${measurements} measured${awaited > 0 ? `, ${awaited} awaiting results` : ''}; ${[
          countText(duplicates, DUPLICATES.name.toLowerCase()),
          countText(blanks, BLANKS.name.toLowerCase()),
          countText(spikes, SPIKES.name.toLowerCase()),
        ].join(', ')}`,
    ),
    ...years.map(({ year, device, spikes }) => `${year}, ${device}: ${countText(spikes, 'spikes of the year')}`),
    '',
    ...charts.flatMap((chart) => [
      `${chartName(chart)}: ${counted(chart.points.length, 'pair')}. ${describeLimits(chart)} ${chartStatus(chart).text}`,
      ...chart.points
        .filter(({ verdict, endsRun }) => verdict !== 'in-control' || endsRun)
        .map(({ pair, verdict }) => `  ${pair.month} ${pair.where}: ${verdict.replaceAll('-', ' ')}`),
      ...chart.flags.map((flag) => `  ${flag}`),
    ]),
    ...(checks.length > 0 ? ['', 'Blanks and spikes'] : []),
    ...checks.map(
      ({ check, month, verdict }) =>
        `  ${month} ${check.kind} ${check.serial || check.id}: ${verdict.replaceAll('-', ' ')}`,
    ),
  ];
  const none = months.length === 0 ? ['Nothing is measured yet: no plan has a result.'] : [];
  return `${[...none, ...lines, '', ...CAUTIONS].join('\n')}\n`;
}
