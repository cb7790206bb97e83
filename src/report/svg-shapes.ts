/** The shapes of a drawing as SVG. */
import type { Edge } from '../../geometry/arrangement/types.ts';
import type { Tone } from '../../geometry/messages/tone.ts';
import type { XY } from '../../geometry/plan/model.ts';
import { onEdge } from '../../geometry/region/visible-edges.ts';
import { roleColor } from '../drawing/colors.ts';
import type { ColorRole, Ink, Part, Shape } from '../drawing/display-list.ts';
import { DASHES, LINE_WIDTHS } from '../drawing/line-widths.ts';
import { verdictSign } from '../drawing/verdict-sign.ts';
import { HATCHES, type HatchName } from '../theme/hatches.ts';
import { COLOR, FULL_WEIGHT_RATIO, PX_MM, SMALL_RATIO, TAKEN_GROUND } from './style.ts';
import { element, group, num } from './svg.ts';
import { onPaper, toPaper, type View } from './view.ts';

/** Of shapes that are in mm of paper already. */
export const ON_PAPER: View = { scale: { ratio: 1, words: '' }, originX: 0, originY: 0 };

/** The sign of a verdict about a point of the paper; the radius to its outer edge, mm. */
export function verdictMark(verdict: Tone, x: number, y: number, radius: number): string {
  return svgShapes(ON_PAPER, verdictSign(verdict, [x, y], radius));
}

/** Every clip of a drawing is to the floors of the same rooms. */
const FLOOR = 'open-floor';

export function svgShapes(view: View, shapes: readonly Shape[]): string {
  const clip = shapes.find(({ within }) => within)?.within;
  const floor = clip && element('path', { d: pathData(view, clip), 'clip-rule': 'evenodd' });
  return (
    (floor ? element('clipPath', { id: FLOOR }, floor) : '') + shapes.map((shape) => svgShape(view, shape)).join('')
  );
}

function svgShape(view: View, { ink, parts, within }: Shape): string {
  const d = pathData(view, parts);
  if (!d) return '';
  const drawn = [ink.fill && paperColor(ink.fill), ink.hatch && hatchFill(ink.hatch)]
    .flatMap((fill) => fill || [])
    .map((fill) => element('path', { d, fill, 'fill-rule': ink.rule, opacity: ink.opacity }));
  if (ink.line !== undefined && ink.color) drawn.push(element('path', { d, fill: 'none', ...strokeOf(view, ink) }));
  return within ? group({ 'clip-path': `url(#${FLOOR})` }, ...drawn) : drawn.join('');
}

function strokeOf(
  view: View,
  { line = 0, color, dash = [] }: Ink,
): Readonly<Record<string, string | number | undefined>> {
  const dashes = typeof dash === 'string' ? DASHES[dash].mm : dash;
  return {
    stroke: color && paperColor(color),
    'stroke-width': typeof line === 'number' ? line : lineWidth(view, line),
    'stroke-linejoin': line === 'wall' || line === 'region' ? 'round' : undefined,
    'stroke-dasharray': dashes.length > 0 ? dashes.map(num).join(' ') : undefined,
  };
}

/** The edge of the white is finer where the house is drawn small, and so is furniture. */
function lineWidth({ scale: { ratio } }: View, line: keyof typeof LINE_WIDTHS): number {
  const { mm } = LINE_WIDTHS[line];
  if (line === 'region') return mm * Math.min(1, Math.max(0.5, FULL_WEIGHT_RATIO / ratio));
  return line === 'object' && ratio > SMALL_RATIO ? mm * 0.6 : mm;
}

/** White is where a detector may sit: furniture, on which one may, has no fill. */
const ON_SHEET: Readonly<Partial<Record<ColorRole, string>>> = {
  ground: TAKEN_GROUND,
  sheet: COLOR.paper,
  objectFill: '',
};

export function paperColor(role: ColorRole): string {
  return ON_SHEET[role] ?? roleColor(COLOR, role);
}

/** `url(#…)` of a hatch, for `fill`. */
export function hatchFill(name: HatchName): string {
  return `url(#hatch-${name})`;
}

/** The definitions of the hatches that are used, in the size that they have on screen at 96 px to the inch. */
export function hatchDefinitions(names: Iterable<HatchName>): string {
  return [...names].map(hatchDefinition).join('');
}

function hatchDefinition(name: HatchName): string {
  const { width, height, turn, stroke, fill, weight } = HATCHES[name];
  const marks = [];
  if (stroke) marks.push(element('path', { d: stroke, fill: 'none', stroke: COLOR.hatch, 'stroke-width': weight }));
  if (fill) marks.push(element('path', { d: fill, fill: COLOR.hatch }));
  const patternTransform = `scale(${PX_MM}) rotate(${turn})`;
  return element(
    'pattern',
    { id: `hatch-${name}`, width, height, patternUnits: 'userSpaceOnUse', patternTransform },
    ...marks,
  );
}

function pathData(view: View, parts: readonly Part[]): string {
  return parts
    .flatMap(({ outlines }) => outlines)
    .map((outline) => {
      const run = 'points' in outline ? pointsData(view, outline.points) : edgesData(view, outline.edges);
      return run && outline.closed ? `${run}Z` : run;
    })
    .join('');
}

function pointsData(view: View, points: readonly XY[]): string {
  return points.map((p, i) => `${i === 0 ? 'M' : 'L'}${pointData(view, p)}`).join('');
}

function edgesData(view: View, edges: readonly Edge[]): string {
  const [first] = edges;
  return first ? `M${pointData(view, onEdge(first, 0))}${edges.map((edge) => edgeData(view, edge)).join('')}` : '';
}

function edgeData(view: View, edge: Edge): string {
  if (edge.kind === 'line') return `L${pointData(view, edge.to)}`;
  const r = num(onPaper(view, edge.radius));
  const clockwise = edge.sweep > 0 ? 1 : 0;
  // An SVG arc cannot say a whole turn, and loses digits near it: such arcs are drawn in two halves.
  const halves = Math.abs(edge.sweep) > Math.PI * 1.5 ? [0.5, 1] : [1];
  const large = halves.length === 1 && Math.abs(edge.sweep) > Math.PI ? 1 : 0;
  return halves.map((share) => `A${r} ${r} 0 ${large} ${clockwise} ${pointData(view, onEdge(edge, share))}`).join('');
}

function pointData(view: View, p: XY): string {
  const [x, y] = toPaper(view, p);
  return `${num(x)} ${num(y)}`;
}
