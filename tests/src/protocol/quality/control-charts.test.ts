import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Plan } from '../../../../geometry/plan/model.ts';
import { csv } from '../../../../src/protocol/csv.ts';
import { type ControlChart, controlCharts } from '../../../../src/protocol/quality/control-charts.ts';
import { chartStatus } from '../../../../src/protocol/quality/describe-quality.ts';
import { qualityBook } from '../../../../src/protocol/quality/quality-book.ts';
import { chartRows } from '../../../../src/protocol/quality/quality-csv.ts';
import { asNumber } from '../../../../src/protocol/results/exact.ts';
import { days, independently, invented, onePlace as plan } from '../../../helpers/invented-pairs.ts';

describe('control charts', () => {
  const pairs = invented();
  const book = qualityBook(pairs.map((values, i) => plan(values, days(i))));
  const charts = controlCharts(book.pairs);

  it('flag of 200 invented pairs what an independent calculation flags', () => {
    expect(book.pairs).toHaveLength(200);
    expect(charts.map(({ points }) => points.map(({ verdict }) => verdict))).toEqual(independently(pairs));
    expect(charts.flatMap(({ points }) => points).some(({ verdict }) => verdict === 'out-of-control')).toBe(true);
  });

  it('take own limits from 20 pairs on, and never looser ones than published', () => {
    const even = (count: number) =>
      controlCharts(qualityBook(Array.from({ length: count }, (_, i) => plan([6, 6.4], days(i)))).pairs)[0];
    expect(even(19)).toMatchObject({ warning: 28, control: 36, own: false });
    expect(even(20)?.own).toBe(true);
    expect(even(20)?.warning).toBeCloseTo((1.96 * 40) / 6.2, 6);
    const wild = controlCharts(qualityBook(Array.from({ length: 30 }, (_, i) => plan([5, 9], days(i)))).pairs)[0];
    expect(wild).toMatchObject({ warning: 28, control: 36, own: false });
  });

  it('see two warnings one after another as a run, and one alone not', () => {
    const chart = (values: readonly (readonly [number, number])[]) =>
      controlCharts(qualityBook(values.map((each, i) => plan(each, days(i)))).pairs)[0] as ControlChart;
    const [good, bad] = [
      [5, 5.1],
      [5, 6.7],
    ] as const; // 29 %
    expect(chart([bad, good, bad]).points.map(({ endsRun }) => endsRun)).toEqual([false, false, false]);
    const run = chart([good, bad, bad, good]);
    expect(run.points.map(({ endsRun }) => endsRun)).toEqual([false, false, true, false]);
    expect(run.flags.some((flag) => flag.startsWith('Two warnings'))).toBe(true);
  });

  it('hold each pair once, whatever the order of the plans', () => {
    fc.assert(
      fc.property(
        fc.shuffledSubarray(
          pairs.map((values, i) => plan(values, days(i))),
          { minLength: 200, maxLength: 200 },
        ),
        (shuffled) => {
          const again = controlCharts(qualityBook(shuffled).pairs);
          expect(again.map(({ points }) => points.map(({ value }) => asNumber(value)).sort())).toEqual(
            charts.map(({ points }) => points.map(({ value }) => asNumber(value)).sort()),
          );
        },
      ),
      { numRuns: 3 },
    );
  });

  it('go out as a table of one row a pair', () => {
    const text = csv(chartRows(charts));
    expect(text.split('\r\n')).toHaveLength(1 + 200 + 1);
    expect(csv([['a,b', 'say "yes"', '=1+1', 2]])).toBe('"a,b","say ""yes""",\'=1+1,2\r\n');
  });
});

describe('pairs of several kinds of device', () => {
  // N.J.A.C. 7:28-27.10(c): pairs are made and judged for each type of device.
  const [good, bad] = [
    [5, 5.1],
    [5, 6.7], // 29 %
  ] as const;
  const of = (kind: string, values: readonly (readonly [number, number])[], from = 0) =>
    values.map((each, i): Plan => {
      const made = plan(each, days(from + 2 * i));
      return { ...made, kit: { ...made.kit, kind } };
    });
  const upper = (plans: readonly Plan[]) =>
    new Map(
      controlCharts(qualityBook(plans).pairs)
        .filter(({ band }) => band.from === 4)
        .map((chart) => [chart.device, chart]),
    );

  it('have charts of their own: good pairs of one kind do not stand between two warnings of another', () => {
    const charts = upper([...of('electret', [bad, bad]), ...of('charcoal', [good, good], 1)]);
    expect([...charts.keys()]).toEqual(['charcoal', 'electret']);
    expect(charts.get('electret')?.points.map(({ endsRun }) => endsRun)).toEqual([false, true]);
    expect(charts.get('charcoal')?.flags).toEqual([]);
  });

  it('do not thin out what is out of control', () => {
    const many = Array.from({ length: 100 }, () => good);
    const charts = upper([...of('electret', [[4, 8], good]), ...of('charcoal', many, 1)]);
    expect(charts.get('electret')?.flags.join(' ')).toContain('1 of 2 pairs are out of control');
  });

  it('give no own limits to each other', () => {
    const charts = upper([
      ...of('electret', [good]),
      ...of(
        'charcoal',
        Array.from({ length: 20 }, () => good),
        1,
      ),
    ]);
    expect([charts.get('electret')?.own, charts.get('charcoal')?.own]).toEqual([false, true]);
  });

  it('without a pair the three charts stand all the same', () => {
    expect(controlCharts([]).map(({ device, points }) => [device, points.length])).toEqual([
      ['', 0],
      ['', 0],
      ['', 0],
    ]);
  });
});

describe('the last pair', () => {
  const at = (values: readonly number[], day: string | null): Plan => {
    const made = plan(values, day ?? '2026-03-01');
    return day === null ? { ...made, visit: { ...made.visit, end: null } } : made;
  };
  const upper = (plans: readonly Plan[]) => controlCharts(qualityBook(plans).pairs)[0] as ControlChart;
  // 120 good pairs, so that one bad pair is no more than 1 in 100: N.J.A.C. 7:28-27.10(c).
  const many = Array.from({ length: 120 }, (_, i) => at([5, 5.1], days(i)));
  const STOP = 'stop measuring with these devices';

  it.each([
    ['before', (bad: Plan, good: Plan) => [bad, good]],
    ['after', (bad: Plan, good: Plan) => [good, bad]],
  ])('is the worst of its time: out of control when the bad one is named %s the good one', (_, order) => {
    const chart = upper([...many, ...order(at([4, 8], '2026-12-01'), at([5, 5.1], '2026-12-01'))]);
    expect(chart.flags.join(' ')).toContain(STOP);
    expect(chartStatus(chart)).toEqual({ status: 'blocked', text: 'Out of control.' });
  });

  it('may be one without a date: it is never behind all others', () => {
    const chart = upper([...many, at([4, 8], null)]);
    expect(chart.flags.join(' ')).toContain(`A pair without a date is out of control: ${STOP}`);
    expect(chartStatus(chart).status).toBe('blocked');
  });

  it('is not one that good pairs of later days followed', () => {
    const chart = upper([at([4, 8], '2025-12-01'), ...many]);
    expect(chart.flags).toEqual([]);
    expect(chartStatus(chart).status).toBe('clear');
  });
});

describe('three detectors side by side', () => {
  // No text says how three are charted: as on Results, the two farthest apart are compared, in the band of the mean of all.
  const book = (values: readonly number[]) => qualityBook([three(values)]);
  const three = (values: readonly number[]): Plan => {
    const made = plan(values, '2026-03-02', 'X');
    // In a triangle: of three in a row the outer two would be too far apart.
    const [a, b, c] = [
      [0, 0],
      [220, 0],
      [110, 190],
    ] as const;
    const levels = made.levels.map((level) => ({
      ...level,
      detectors: level.detectors.map((each, i) => ({ ...each, at: [a, b, c][i] ?? a })),
    }));
    return { ...made, levels };
  };
  const points = (values: readonly number[]) => controlCharts(book(values).pairs).flatMap((chart) => chart.points);

  it('are one of the pairs that are required', () => {
    expect(book([4, 4.2, 4.1]).months[0]).toMatchObject({ measurements: 1, duplicates: { done: 1, required: 1 } });
  });

  it.each([
    [[4, 4.2, 4.1], 'in-control', [4, 4.2]],
    [[4, 9, 4], 'out-of-control', [4, 9]],
    [[9, 4, 4], 'out-of-control', [4, 9]],
    [[1, 1, 2.1], 'warning', [1, 2.1]],
    [[3, 4.6, 4.6], 'out-of-control', [3, 4.6]], // 42 % in the band of 4.07; in that of 3.8 it would be in control
  ])('%j: %s', (values, verdict, compared) => {
    expect(points(values)).toMatchObject([{ verdict, pair: { where: 'X, d1, d2 and d3: the two that differ most' } }]);
    expect(points(values)[0]?.pair.values.map(asNumber)).toEqual(compared);
  });

  it('are compared by two, where the third has no result', () => {
    const made = three([4, 4.2, 4.1]);
    const chart = controlCharts(qualityBook([{ ...made, readings: made.readings.slice(0, 2) }]).pairs)[0];
    expect(chart?.points.map(({ pair }) => pair.where)).toEqual(['X, d1 and d2']);
  });
});

describe('pairs that agree wholly', () => {
  it('twenty of them are in control, though their own lines fall to zero', () => {
    const plans = Array.from({ length: 20 }, (_, i) => plan([5, 5], `2026-03-${String(i + 1).padStart(2, '0')}`));
    const [upper] = controlCharts(qualityBook(plans).pairs);
    expect(upper?.points.map(({ verdict }) => verdict)).toEqual(Array.from({ length: 20 }, () => 'in-control'));
    expect(upper?.flags).toEqual([]);
  });
});

describe('two results below the limit of the laboratory', () => {
  // ANSI/AARST MS-QA-2019, Table 7.1: a pair agrees where both are below what can be told from nothing.
  const chartOf = (below: readonly [boolean, boolean]) => {
    const made = plan([1, 3], '2026-03-02');
    const readings = made.readings.map((reading, i) => ({ ...reading, belowLimit: below[i] === true }));
    const charts = controlCharts(qualityBook([{ ...made, readings }]).pairs);
    return charts.flatMap(({ points }) => points.map(({ verdict }) => verdict));
  };
  it('agree, whatever the limits are', () => expect(chartOf([true, true])).toEqual(['in-control']));
  it('one of them alone is held against the lines', () => expect(chartOf([true, false])).toEqual(['out-of-control']));
});
