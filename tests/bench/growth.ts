import { digits } from './figures.ts';

/** One measured size: number of features of the level, and time, ms. */
export interface GrowthPoint {
  readonly features: number;
  readonly ms: number;
}

export interface Growth {
  readonly name: string;
  readonly points: readonly GrowthPoint[];
  /** Power of the number of features with which the time grows. */
  readonly exponent: number;
  /** Time at one feature by the fit, ms. */
  readonly factor: number;
}

/** Fits a straight line through the logarithms by least squares. Needs at least two sizes. */
export function fitted(name: string, points: readonly GrowthPoint[]): Growth {
  const xs = points.map(({ features }) => Math.log(features));
  const ys = points.map(({ ms }) => Math.log(ms));
  const mean = (values: readonly number[]) => values.reduce((sum, value) => sum + value, 0) / values.length;
  const [mx, my] = [mean(xs), mean(ys)];
  const covariance = mean(xs.map((x, i) => (x - mx) * ((ys[i] as number) - my)));
  const exponent = covariance / mean(xs.map((x) => (x - mx) ** 2));
  return { name, points, exponent, factor: Math.exp(my - exponent * mx) };
}

const WIDTH = 760;
const HEIGHT = 460;
const LEFT = 70;
const RIGHT = 190;
const TOP = 50;
const BOTTOM = 60;

/** Color and mark of each curve, distinct without color too. */
const LOOKS = [
  { ink: '#0b5cad', mark: 'disc' },
  { ink: '#a34a00', mark: 'square' },
] as const;

/** Returns a log-log plot of time against features with the fitted lines, as an SVG document. */
export function growthPlot(curves: readonly Growth[]): string {
  const all = curves.flatMap(({ points }) => points);
  const [x0, x1] = [10, 10_000];
  const [y0, y1] = [
    10 ** Math.floor(Math.log10(Math.min(...all.map(({ ms }) => ms)))),
    10 ** Math.ceil(Math.log10(Math.max(...all.map(({ ms }) => ms)))),
  ];
  const x = (features: number) =>
    LEFT + ((Math.log(features) - Math.log(x0)) / (Math.log(x1) - Math.log(x0))) * (WIDTH - LEFT - RIGHT);
  const y = (ms: number) =>
    HEIGHT - BOTTOM - ((Math.log(ms) - Math.log(y0)) / (Math.log(y1) - Math.log(y0))) * (HEIGHT - TOP - BOTTOM);
  const parts = [...gridOf(x0, x1, y0, y1, x, y), ...curves.flatMap((curve, i) => curveOf(curve, i, x, y))];
  return `${[
    `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${WIDTH} ${HEIGHT}" font-family="sans-serif" font-size="13">`,
    `<title>Time against features</title>`,
    `<rect width="${WIDTH}" height="${HEIGHT}" fill="#fff"/>`,
    `<text x="${LEFT}" y="26" font-size="15">Time against features of the level, both by logarithm</text>`,
    ...parts,
    '</svg>',
  ].join('\n')}\n`;
}

type Scale = (value: number) => number;

function gridOf(x0: number, x1: number, y0: number, y1: number, x: Scale, y: Scale): string[] {
  const lines: string[] = [];
  for (let features = x0; features <= x1; features *= 10) {
    lines.push(
      `<path d="M${fix(x(features))} ${TOP}V${HEIGHT - BOTTOM}" stroke="#d0d0d0"/>`,
      `<text x="${fix(x(features))}" y="${HEIGHT - BOTTOM + 20}" text-anchor="middle">${features.toLocaleString('en-US')}</text>`,
    );
  }
  for (let ms = y0; ms <= y1 * 1.001; ms *= 10) {
    lines.push(
      `<path d="M${LEFT} ${fix(y(ms))}H${WIDTH - RIGHT}" stroke="#d0d0d0"/>`,
      `<text x="${LEFT - 8}" y="${fix(y(ms) + 4)}" text-anchor="end">${Number(ms.toPrecision(1))} ms</text>`,
    );
  }
  const middle = (LEFT + WIDTH - RIGHT) / 2;
  lines.push(
    `<text x="${middle}" y="${HEIGHT - 16}" text-anchor="middle">features: openings, fixtures, objects</text>`,
  );
  return lines;
}

function curveOf({ name, points, exponent, factor }: Growth, i: number, x: Scale, y: Scale): string[] {
  const { ink, mark } = LOOKS[i % LOOKS.length] as (typeof LOOKS)[number];
  const [first, last] = [points[0], points[points.length - 1]];
  if (!first || !last) return [];
  const onFit = ({ features }: GrowthPoint) => `${fix(x(features))} ${fix(y(factor * features ** exponent))}`;
  const at = `x="${fix(x(last.features) + 12)}"`;
  return [
    `<path d="M${onFit(first)}L${onFit(last)}" stroke="${ink}" fill="none"/>`,
    ...points.map((point) => markAt(mark, x(point.features), y(point.ms), ink)),
    `<text ${at} y="${fix(y(last.ms))}" fill="${ink}">${name}</text>`,
    `<text ${at} y="${fix(y(last.ms) + 17)}" fill="${ink}">features to the power ${digits(exponent)}</text>`,
  ];
}

function markAt(mark: 'disc' | 'square', x: number, y: number, ink: string): string {
  if (mark === 'disc') return `<circle cx="${fix(x)}" cy="${fix(y)}" r="4.5" fill="${ink}"/>`;
  return `<rect x="${fix(x - 4)}" y="${fix(y - 4)}" width="8" height="8" fill="${ink}"/>`;
}

function fix(value: number): string {
  return value.toFixed(1);
}
