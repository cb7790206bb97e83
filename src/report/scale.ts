import { FOOT, type LengthUnit } from '../../geometry/units/index.ts';

/** A round drawing scale: a length of 1 on paper is `ratio` in the house. */
export interface DrawingScale {
  readonly ratio: number;
  /** As printed on a drawing: "1/4 in = 1 ft", "1:50". */
  readonly words: string;
}

/** Scales of architects (inches per foot) and engineers (feet per inch). Largest drawing first. */
const PER_FOOT: readonly (readonly [ratio: number, words: string])[] = [
  [12, '1 in = 1 ft'],
  [24, '1/2 in = 1 ft'],
  [32, '3/8 in = 1 ft'],
  [48, '1/4 in = 1 ft'],
  [60, '1 in = 5 ft'],
  [64, '3/16 in = 1 ft'],
  [96, '1/8 in = 1 ft'],
  [120, '1 in = 10 ft'],
  [128, '3/32 in = 1 ft'],
  [192, '1/16 in = 1 ft'],
  ...[20, 30, 40, 50, 60, 100, 200, 300, 500, 1000].map((feet) => [feet * 12, `1 in = ${feet} ft`] as const),
];
const METRIC = [20, 25, 50, 75, 100, 125, 150, 200, 250, 300, 400, 500, 750, 1000, 2000, 5000, 10000];

/** Returns the round scales of a unit, largest drawing first. */
export function drawingScales(unit: LengthUnit): readonly DrawingScale[] {
  if (unit === 'metric') return METRIC.map((ratio) => ({ ratio, words: `1:${ratio}` }));
  return PER_FOOT.map(([ratio, words]) => ({ ratio, words }));
}

/**
 * Returns the largest round scale at which a rectangle fits; beyond the last of the list, the next whole thousand.
 * @param width of the rectangle, mm in the house; likewise `height`
 * @param room space on the paper, mm
 */
export function fittingScale(
  width: number,
  height: number,
  room: { readonly width: number; readonly height: number },
  unit: LengthUnit,
): DrawingScale {
  const least = Math.max(width / room.width, height / room.height);
  const fit = drawingScales(unit).find(({ ratio }) => ratio >= least);
  if (fit) return fit;
  const ratio = Math.ceil(least / 1000) * 1000;
  return { ratio, words: `1:${ratio}` };
}

/** A scale bar: the length of one part in the house, mm, and the labels of its marks. */
export interface BarParts {
  readonly part: number;
  readonly labels: readonly string[];
}

const FEET_STEPS = [0.5, 1, 2, 5, 10, 20, 50, 100, 200, 500, 1000];
const METER_STEPS = [0.25, 0.5, 1, 2, 5, 10, 20, 50, 100, 200, 500];

/** Returns four parts of a round length, the longest that fits in `width` mm of paper. */
export function barParts({ ratio }: DrawingScale, width: number, unit: LengthUnit): BarParts {
  const metric = unit === 'metric';
  const one = metric ? 1000 : FOOT;
  const steps = metric ? METER_STEPS : FEET_STEPS;
  const step = [...steps].reverse().find((each) => (each * one * 4) / ratio <= width) ?? steps[0] ?? 1;
  const labels = [0, 1, 2, 3, 4].map((i) => String(Math.round(step * i * 100) / 100));
  return { part: step * one, labels: labels.map((label, i) => (i === 4 ? `${label} ${metric ? 'm' : 'ft'}` : label)) };
}
