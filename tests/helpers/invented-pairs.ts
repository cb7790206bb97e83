import type { Detector, Plan } from '../../geometry/plan/model.ts';
import { emptyPlan } from '../../geometry/planfile/empty.ts';
import { seededRandom } from './seeded-level.ts';

const detector = (id: string, x: number, pair: string | null): Detector => ({
  id,
  label: id,
  at: [x, 0],
  base: 762,
  radius: 50,
  tall: 25,
  pair,
});

/** Returns an invented plan of one location with one or two results, picked up on a day of 2026. */
export function onePlace(values: readonly number[], day: string, title = day): Plan {
  const base = emptyPlan();
  const detectors = values.map((_, i) => detector(`d${i + 1}`, i * 220, values.length > 1 ? 'A' : null));
  return {
    ...base,
    title,
    levels: base.levels.map((level) => ({ ...level, detectors })),
    visit: { closedSince: null, mitigationOnSince: null, start: null, end: `${day}T12:00:00Z` },
    readings: values.map((value, i) => ({ detector: `d${i + 1}`, value, unit: 'pCi/L' as const })),
  };
}

/** Returns the date of pair `i`, twenty a month from January 2026. */
export const days = (i: number) =>
  `2026-${String(1 + Math.floor(i / 20)).padStart(2, '0')}-${String(1 + (i % 20)).padStart(2, '0')}`;

/** 200 invented pairs of one precision with a few outliers, in tenths of a pCi/L. */
export function invented(): readonly (readonly [number, number])[] {
  const random = seededRandom(2026);
  return Array.from({ length: 200 }, (_, i) => {
    const mean = 0.5 + 12 * random() ** 2;
    const spread = (i % 37 === 0 ? 0.5 : 0.12) * mean;
    const tenths = (value: number) => Math.max(0, Math.round(value * 10)) / 10;
    return [tenths(mean + spread * (random() - 0.5)), tenths(mean - spread * (random() - 0.5))] as const;
  });
}

/** Evaluates pairs by integer arithmetic in tenths, independent of the charts: MS-QA-2019 3.5 and Table 7.1, own limits from 20 pairs on. */
export function independently(pairs: readonly (readonly [number, number])[]) {
  const bands = { high: [] as number[], middle: [] as number[], low: [] as number[] };
  for (const [a, b] of pairs) {
    const [i, j] = [Math.round(a * 10), Math.round(b * 10)];
    const shown = Math.floor((i + j + 1) / 2); // the mean in tenths, rounded half up
    if (shown >= 40) bands.high.push((200 * Math.abs(i - j)) / (i + j));
    else if (shown >= 20) bands.middle.push((200 * Math.abs(i - j)) / (i + j));
    else bands.low.push(Math.abs(i - j) / 10);
  }
  const count = (values: readonly number[], published: readonly [number, number]) => {
    const root = Math.sqrt(values.reduce((sum, value) => sum + value * value, 0) / values.length);
    const [warn, stop] =
      values.length < 20 ? published : [Math.min(published[0], 1.96 * root), Math.min(published[1], 2.576 * root)];
    const below = (value: number) => (value >= warn ? 'warning' : 'in-control');
    return values.map((value) => (value >= stop ? 'out-of-control' : below(value)));
  };
  return [
    count(bands.high, [28, 36]),
    count(bands.middle, [50, 67]),
    bands.low.map((value) => (value > 1 ? 'warning' : 'in-control')),
  ];
}
