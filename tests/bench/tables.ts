import type { Size } from '../helpers/seeded-level.ts';
import { BESIDE, keyOf, type Results, type Scope } from './conduct.ts';
import { againstBudget, digits, duration, markdownTable, megabytes, signedPercent } from './figures.ts';
import { OURS } from './jobs.ts';
import { RIVALS } from './rivals/all.ts';
import { ROWS, type Row } from './rows.ts';
import { type Samples, summarize } from './timing.ts';

/** Returns the table of the engine and every library on one level. */
export function rivalTable({ rivals, rows, areas }: Results, size: Size): string {
  const ours = rows.get(keyOf(BESIDE, size));
  const area = areas.get(size);
  if (!ours || !area) throw new Error(`nothing was measured of ${size}`);
  const own = summarize(ours.wall);
  const lines = RIVALS.map(({ id, name }) => {
    const result = rivals.get(keyOf(id, size));
    if (!result || result.samples.wall.length === 0) {
      return [name, `failed: ${shortened(result?.failure ?? 'not run')}`, ...new Array(7).fill('–')];
    }
    const { median, min } = summarize(result.samples.wall);
    const times = `${digits(median / own.median)} (${digits(min / own.min)})`;
    return [name, ...timeCells(result.samples), times, signedPercent(result.area / area.reference - 1)];
  });
  const first = ['**Stillspot**, rooms ready', ...timeCells(ours), '1', signedPercent(area.ours / area.reference - 1)];
  return markdownTable(
    ['way', 'median ms', '95 of 100', '99 of 100', 'least', 'processor', 'runs', 'times ours (by least)', 'area off'],
    [first, ...lines],
  );
}

function timeCells({ wall, cpu }: Samples): string[] {
  const { median, p95, p99, min, count } = summarize(wall);
  return [median, p95, p99, min, summarize(cpu).median].map(digits).concat(String(count));
}

export function trialTable({ trials }: Results): string {
  const nameOf = (id: string) => RIVALS.find((one) => one.id === id)?.name ?? '**Stillspot**';
  return markdownTable(
    ['way', 'houses', 'threw', 'no answer in time', 'off by more than 0.5 % of the floor', 'farthest off'],
    [OURS, ...RIVALS.map(({ id }) => id)].map((id) => {
      const { tried = 0, threw = 0, hung = 0, wrong = 0, worst = 0 } = trials.get(id) ?? {};
      return [nameOf(id), ...[tried, threw, hung, wrong].map(String), signedPercent(worst)];
    }),
  );
}

/** Returns the table of the engine only, with its budgets. */
export function ownTable({ rows }: Pick<Results, 'rows'>): string {
  const lines = ROWS.flatMap((row) => row.sizes.map((size) => ownLine(row, size, rows.get(keyOf(row.id, size)))));
  return markdownTable(
    ['what', 'level', 'median', '95 of 100', '99 of 100', 'most', 'least', 'processor', 'runs', 'budget'],
    lines.filter((line) => line.length > 0),
  );
}

function ownLine(row: Row, size: Size, samples: Samples | undefined): string[] {
  if (!samples) return [];
  const { median, p95, p99, max, min, count } = summarize(samples.wall);
  const cells = [median, p95, p99, max, min, summarize(samples.cpu).median].map(duration);
  const level = row.sizes.length > 1 ? size : '–';
  return [row.name, level, ...cells, String(count), budgetCell(row, size, { median, p99 })];
}

function budgetCell({ budgets }: Row, size: Size, figures: Readonly<Record<'median' | 'p99', number>>): string {
  const words = budgets.flatMap(({ of, most }) => {
    const limit = most[size];
    if (limit === undefined) return [];
    return [`${of === 'median' ? 'median' : '99 of 100'} ${duration(limit)}: ${againstBudget(figures[of], limit)}`];
  });
  return words.join('; ') || '–';
}

/** Heap that the huge level may take, bytes. */
const MOST_HEAP = 150e6;

/** Difference of live bytes between two measurements that is no leak. */
const HEAP_NOISE = 2e6;

export function memoryTable({ memory }: Results): string {
  const { plan, worked, early, late, earlyEdits, lateEdits } = memory;
  const growth = late - early;
  const grown = `${growth <= HEAP_NOISE ? 'met' : 'missed'}: ${megabytes(Math.abs(growth))} ${growth > 0 ? 'more' : 'less'}`;
  return markdownTable(
    ['huge level', 'lives on the heap', 'budget'],
    [
      ['the drawing alone', megabytes(plan), '–'],
      ['with rooms, zones, region and all lists', megabytes(worked), `150 MB: ${againstBudget(worked, MOST_HEAP)}`],
      [`after ${earlyEdits.toLocaleString('en-US')} edits`, megabytes(early), '–'],
      [`after ${lateEdits.toLocaleString('en-US')} edits`, megabytes(late), `no growth: ${grown}`],
    ],
  );
}

export function growthTable({ growth }: Results): string {
  const [first] = growth;
  const head = ['features', ...(first?.points ?? []).map(({ features }) => features.toLocaleString('en-US')), 'power'];
  return markdownTable(
    head,
    growth.map(({ name, points, exponent }) => [name, ...points.map(({ ms }) => duration(ms)), digits(exponent)]),
  );
}

export function repeatsInWords({ rounds, times }: Scope): string {
  return `${rounds} round${rounds > 1 ? 's' : ''}; in each at most ${times} timed runs of every library`;
}

function shortened(message: string): string {
  return message.length > 70 ? `${message.slice(0, 67)}…` : message;
}
