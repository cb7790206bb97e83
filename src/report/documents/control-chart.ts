/**
 * The control chart as SVG in mm, the same on the page, in print and in files. On the page its colors are custom properties of the theme.
 */
import type { ChartPoint, ControlChart } from '../../protocol/quality/control-charts.ts';
import { chartName, formatLimit, POINT_WORD, statisticName } from '../../protocol/quality/describe-quality.ts';
import { asNumber, decimalText } from '../../protocol/results/exact.ts';
import { COLOR } from '../style.ts';
import { type Attributes, element, escapeXml, group, line, num } from '../svg.ts';
import { drawText, textWidth } from '../text.ts';

/** Size of a chart and of its type, mm. Type of 3.4 mm is 16 px at the width of a tablet. */
export const CHART_MM = { width: 200, height: 78, type: 3.4 } as const;
const PLOT = { left: 15, right: 164, top: 8, bottom: 68 } as const;
const LINE = { axis: 0.25, way: 0.2, limit: 0.5, mark: 0.35 } as const;

/** Colors of a chart: values, or custom properties of the page. */
export interface ChartColors {
  readonly ink: string;
  readonly soft: string;
  readonly ground: string;
  readonly point: Readonly<Record<ChartPoint['verdict'], string>>;
}

const tones = COLOR.verdict;
/** Colors for print: the verdict tones of the plan (Okabe and Ito, 2008, darkened). */
export const PAPER_COLORS: ChartColors = {
  ink: COLOR.ink,
  soft: COLOR.inkSoft,
  ground: COLOR.paper,
  point: { 'in-control': tones.clear.line, warning: tones.tight.line, 'out-of-control': tones.blocked.line },
};

/** Colors for the page: custom properties that the theme sets. */
export const PAGE_COLORS: ChartColors = {
  ink: 'var(--ink)',
  soft: 'var(--ink-soft)',
  ground: 'var(--paper)',
  point: {
    'in-control': 'var(--clear-line)',
    warning: 'var(--tight-line)',
    'out-of-control': 'var(--blocked-line)',
  },
};

/** Returns the SVG of a chart of size `CHART_MM` with its upper left corner at (0, 0). A chart without pairs shows its limits. */
export function drawControlChart(chart: ControlChart, colors: ChartColors): string {
  const scale = scalesOf(chart);
  const way = chart.points
    .map(({ value }, i) => `${i === 0 ? 'M' : 'L'}${num(scale.x(i))} ${num(scale.y(asNumber(value)))}`)
    .join('');
  return group(
    {},
    axes(chart, scale, colors),
    limits(chart, scale, colors),
    way && element('path', { d: way, fill: 'none', stroke: colors.soft, 'stroke-width': LINE.way }),
    ...chart.points.map((point, i) => drawPoint(point, scale.x(i), scale.y(asNumber(point.value)), chart, colors)),
  );
}

interface Scales {
  readonly top: number;
  readonly step: number;
  readonly x: (index: number) => number;
  readonly y: (value: number) => number;
}

function scalesOf({ points, warning, control }: ControlChart): Scales {
  const highest = Math.max(1.15 * (control ?? 1.5 * warning), ...points.map(({ value }) => asNumber(value)));
  const step = [0.25, 0.5, 1, 2, 5, 10, 20, 25, 50].find((each) => highest / each <= 8) ?? 100;
  const top = Math.ceil(highest / step) * step;
  const apart = (PLOT.right - PLOT.left - 6) / Math.max(1, points.length - 1);
  return {
    top,
    step,
    x: (index) => PLOT.left + 3 + index * Math.min(apart, 12),
    y: (value) => PLOT.bottom - ((PLOT.bottom - PLOT.top) * value) / top,
  };
}

function axes({ band, points }: ControlChart, { top, step, x, y }: Scales, { ink, soft }: ChartColors): string {
  const stroke = { stroke: ink, 'stroke-width': LINE.axis };
  const style = { size: CHART_MM.type, color: soft } as const;
  const rows = Array.from({ length: Math.round(top / step) + 1 }, (_, i) => i * step);
  return group(
    {},
    drawText(PLOT.left, PLOT.top - 4, statisticName(band), style),
    line(PLOT.left, PLOT.top - 1, PLOT.left, PLOT.bottom, stroke),
    line(PLOT.left, PLOT.bottom, PLOT.right, PLOT.bottom, stroke),
    ...rows.map((value) =>
      group(
        {},
        line(PLOT.left - 1.2, y(value), PLOT.left, y(value), stroke),
        drawText(PLOT.left - 2, y(value) + 1.2, String(value), { ...style, anchor: 'end' }),
      ),
    ),
    ...monthMarks(points, x).map(({ at, month }) =>
      group(
        {},
        line(at, PLOT.bottom, at, PLOT.bottom + 1.2, stroke),
        drawText(at, PLOT.bottom + 5, month, { ...style, anchor: 'middle' }),
      ),
    ),
  );
}

/** Returns the labels of months, without those that have no room. */
function monthMarks(points: readonly ChartPoint[], x: (index: number) => number) {
  const marks: { readonly at: number; readonly month: string }[] = [];
  points.forEach(({ pair: { month } }, i) => {
    const room = textWidth(month, { size: CHART_MM.type }) + 3;
    const last = marks.at(-1);
    if (points[i - 1]?.pair.month !== month && (!last || x(i) - last.at >= room)) marks.push({ at: x(i), month });
  });
  return marks;
}

interface Limit {
  readonly value: number;
  readonly words: string;
  readonly color: string;
  readonly style: Attributes;
}

function limits({ band, warning, control, own }: ControlChart, { y }: Scales, colors: ChartColors): string {
  const list: readonly Limit[] = [
    ...(control === null
      ? []
      : [{ value: control, words: 'Control', color: colors.point['out-of-control'], style: {} }]),
    { value: warning, words: 'Warning', color: colors.point.warning, style: { 'stroke-dasharray': '4 1.6' } },
    // The usual difference belongs to the published limits, not to own limits.
    ...(band.typical === null || own
      ? []
      : [{ value: band.typical, words: 'Usual', color: colors.soft, style: { 'stroke-dasharray': '0.6 1.4' } }]),
  ].sort((a, b) => b.value - a.value);
  // Labels are at least a line's height apart.
  let free = 0;
  return list
    .map(({ value, words, color, style }) => {
      const at = Math.max(y(value) + 1.2, free);
      free = at + CHART_MM.type * 1.2;
      return group(
        {},
        line(PLOT.left, y(value), PLOT.right, y(value), { stroke: color, 'stroke-width': LINE.limit, ...style }),
        drawText(PLOT.right + 2, at, `${words} ${formatLimit(value, band)}`, { size: CHART_MM.type, color }),
      );
    })
    .join('');
}

/** Draws a point. Verdicts differ in shape: circle, triangle, filled square; a ring marks the end of a run. */
function drawPoint(point: ChartPoint, x: number, y: number, { band }: ControlChart, colors: ChartColors): string {
  const { pair, value, verdict, endsRun } = point;
  const said = `${pair.month}, ${pair.where}: ${decimalText(value, 1)}${band.of === 'percent' ? '%' : ' pCi/L'}, ${POINT_WORD[verdict]}${endsRun ? ', ends a run of warnings' : ''}`;
  return group(
    { 'data-point': verdict, 'data-run': endsRun ? 'yes' : undefined },
    element('title', {}, escapeXml(said)),
    pointMark(verdict, x, y, colors),
    endsRun ? runRing(x, y, colors) : '',
  );
}

export function pointMark(
  verdict: ChartPoint['verdict'],
  x: number,
  y: number,
  { point, ground }: ChartColors,
): string {
  const color = point[verdict];
  const rim = { stroke: color, 'stroke-width': LINE.mark };
  switch (verdict) {
    case 'in-control':
      return element('circle', { cx: x, cy: y, r: 0.9, fill: ground, ...rim });
    case 'warning':
      return element('path', {
        d: `M${num(x)} ${num(y - 1.7)}L${num(x + 1.5)} ${num(y + 1)}H${num(x - 1.5)}Z`,
        fill: ground,
        ...rim,
        'stroke-width': LINE.mark * 1.5,
      });
    case 'out-of-control':
      return element('rect', { x: x - 1.3, y: y - 1.3, width: 2.6, height: 2.6, fill: color, ...rim });
  }
}

export function runRing(x: number, y: number, { ink }: ChartColors): string {
  return element('circle', { cx: x, cy: y, r: 2.6, fill: 'none', stroke: ink, 'stroke-width': LINE.mark });
}

/** Returns a summary for screen readers; the table next to the chart has every pair. */
export function describeChart(chart: ControlChart): string {
  const { points } = chart;
  const of = (wanted: ChartPoint['verdict']) => points.filter(({ verdict }) => verdict === wanted).length;
  return `Control chart. ${chartName(chart)}: ${points.length} pairs, ${of('warning')} in warning, ${of('out-of-control')} out of control.`;
}
