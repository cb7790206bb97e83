import { CAUTIONS, counted } from '../../../geometry/messages/index.ts';
import type { ControlChart } from '../../protocol/quality/control-charts.ts';
import { chartName, chartStatus, describeLimits } from '../../protocol/quality/describe-quality.ts';
import { element, group } from '../svg.ts';
import { drawText, lineHeight, SET_AS_MEASURED, type TextStyle, wrapText } from '../text.ts';
import { CHART_MM, drawControlChart, PAPER_COLORS, pointMark, runRing } from './control-chart.ts';

const EDGE = 8;
const HEAD: TextStyle = { size: 4.6, weight: 'bold' };
const BODY: TextStyle = { size: CHART_MM.type };
const FINE: TextStyle = { size: 2.6, color: PAPER_COLORS.soft };

const MARKS = [
  ['in-control', 'in control'],
  ['warning', 'warning'],
  ['out-of-control', 'out of control'],
] as const;

/** Returns one chart as an SVG document in mm: title, chart, legend, exceeded limits with actions, cautions. */
export function controlChartSheet(chart: ControlChart): string {
  const width = CHART_MM.width + 2 * EDGE;
  const parts: string[] = [];
  let y = EDGE;
  const write = (text: string, style: TextStyle, lead = 0) => {
    y += lead;
    for (const row of wrapText(text, CHART_MM.width, style)) {
      y += lineHeight(style);
      parts.push(drawText(EDGE, y, row, style));
    }
  };
  write(`Control chart. ${chartName(chart)}`, HEAD);
  write(`${counted(chart.points.length, 'pair')}. ${describeLimits(chart)}`, BODY, 1);
  y += 5;
  parts.push(group({ transform: `translate(${EDGE} ${y})` }, drawControlChart(chart, PAPER_COLORS)));
  y += CHART_MM.height + 2;
  parts.push(group({ transform: `translate(${EDGE} ${y})` }, drawKey()));
  y += 3;
  write(chartStatus(chart).text, { ...BODY, weight: 'bold' }, 1);
  for (const flag of chart.flags) write(flag, BODY);
  for (const caution of CAUTIONS) write(caution, FINE, caution === CAUTIONS[0] ? 2 : 0);
  const height = y + EDGE;
  return element(
    'svg',
    {
      xmlns: 'http://www.w3.org/2000/svg',
      width: `${width}mm`,
      height: `${height}mm`,
      viewBox: `0 0 ${width} ${height}`,
      ...SET_AS_MEASURED,
    },
    element('rect', { width, height, fill: PAPER_COLORS.ground }),
    ...parts,
  );
}

function drawKey(): string {
  const marks = MARKS.map(([verdict, words], i) =>
    group({}, pointMark(verdict, 17 + i * 40, 0, PAPER_COLORS), drawText(21 + i * 40, 1.2, words, BODY)),
  );
  return group({}, ...marks, runRing(137, 0, PAPER_COLORS), drawText(142, 1.2, 'ends a run of warnings', BODY));
}
