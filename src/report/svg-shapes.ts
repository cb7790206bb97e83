/** The shapes of a drawing as SVG. */
import type { Tone } from '../../geometry/messages/tone.ts';
import { type Part, polar, type Shape, trace } from '../drawing/display-list.ts';
import { type ColorRole, type Ink, roleColor, strokeOf } from '../drawing/inks.ts';
import { verdictSign } from '../drawing/verdict-sign.ts';
import { HATCHES, type HatchName } from '../theme/hatches.ts';
import { COLOR, FULL_WEIGHT_RATIO, PX_MM, SMALL_RATIO, TAKEN_GROUND } from './style.ts';
import { type Attributes, element, group, num } from './svg.ts';
import { onPaper, toPaper, type View } from './view.ts';

/** View for shapes whose coordinates are mm of paper already. */
export const ON_PAPER: View = { scale: { ratio: 1, words: '' }, originX: 0, originY: 0 };

/** Returns the symbol of a verdict around a point of the paper; `radius` is that of its outer edge, mm. */
export function verdictMark(verdict: Tone, x: number, y: number, radius: number): string {
  return svgShapes(ON_PAPER, verdictSign(verdict, [x, y], radius));
}

/** Id of the clip path: all clipped shapes of a drawing share one, the floors of the open rooms. */
const FLOOR = 'open-floor';

export function svgShapes(view: View, shapes: readonly Shape[]): string {
  const clip = shapes.find(({ within }) => within)?.within;
  const floor = clip && element('path', { d: pathData(view, clip), 'clip-rule': 'evenodd' });
  return (floor ? element('clipPath', { id: FLOOR }, floor) : '') + clippedShapes(view, shapes).join('');
}

/** Consecutive clipped shapes share a group: each clipped group takes a renderer as long as a picture of the page. */
function clippedShapes(view: View, shapes: readonly Shape[]): readonly string[] {
  const groups: { readonly isClipped: boolean; readonly drawn: string[] }[] = [];
  for (const shape of shapes) {
    const [isClipped, drawn] = [shape.within !== undefined, svgShape(view, shape)];
    if (groups.at(-1)?.isClipped === isClipped) groups.at(-1)?.drawn.push(drawn);
    else groups.push({ isClipped, drawn: [drawn] });
  }
  return groups.map(({ isClipped, drawn }) =>
    isClipped ? group({ 'clip-path': `url(#${FLOOR})` }, ...drawn) : drawn.join(''),
  );
}

function svgShape(view: View, { ink, parts }: Shape): string {
  const d = pathData(view, parts);
  if (!d) return '';
  const drawn = [ink.fill && paperColor(ink.fill), ink.hatch && hatchFill(ink.hatch)]
    .flatMap((fill) => fill || [])
    .map((fill) => element('path', { d, fill, 'fill-rule': ink.rule, opacity: ink.opacity }));
  if (ink.line !== undefined && ink.color)
    drawn.push(element('path', { d, fill: 'none', ...strokeAttributes(view, ink) }));
  return drawn.join('');
}

/** At small scales the edge of the allowed area and furniture have finer lines. */
function strokeAttributes({ scale: { ratio } }: View, ink: Ink): Attributes {
  const { width, dashes } = strokeOf(ink, 'mm');
  const small = ink.line === 'object' && ratio > SMALL_RATIO ? 0.6 : 1;
  const fine = ink.line === 'region' ? Math.min(1, Math.max(0.5, FULL_WEIGHT_RATIO / ratio)) : small;
  return {
    stroke: ink.color && paperColor(ink.color),
    'stroke-width': width * fine,
    'stroke-linejoin': ink.line === 'wall' || ink.line === 'region' ? 'round' : undefined,
    'stroke-dasharray': dashes.length > 0 ? dashes.map(num).join(' ') : undefined,
  };
}

/** White is the allowed area. Furniture, on which a detector may be placed, has no fill, so that the area shows through. */
const ON_SHEET: Readonly<Partial<Record<ColorRole, string>>> = {
  ground: TAKEN_GROUND,
  sheet: COLOR.paper,
  objectFill: '',
};

export function paperColor(role: ColorRole): string {
  return ON_SHEET[role] ?? roleColor(COLOR, role);
}

/** Returns `url(#…)` of a hatch, for `fill`. */
export function hatchFill(name: HatchName): string {
  return `url(#hatch-${name})`;
}

/** Returns the SVG definitions of the hatches, in the size that they have on screen at 96 px per inch. */
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

/** Arcs beyond this angle, rad, are drawn in two halves: an SVG arc cannot be a full circle, and near one it loses precision. */
const LONG_ARC = Math.PI * 1.5;

/** Returns the data of an SVG path, mm of paper. */
function pathData(view: View, parts: readonly Part[]): string {
  let data = '';
  const point = (x: number, y: number) => toPaper(view, [x, y]).map(num).join(' ');
  const add = (more: string) => {
    data += more;
  };
  const path: Parameters<typeof trace>[0] = {
    moveTo: (x, y) => add(`M${point(x, y)}`),
    lineTo: (x, y) => add(`L${point(x, y)}`),
    closePath: () => add('Z'),
    arc: (x, y, radius, start, end) => {
      const r = num(onPaper(view, radius));
      const sweep = end - start;
      const halves = Math.abs(sweep) > LONG_ARC ? [0.5, 1] : [1];
      const large = halves.length === 1 && Math.abs(sweep) > Math.PI ? 1 : 0;
      const to = (share: number) => point(...polar([x, y], radius, start + sweep * share));
      for (const share of halves) add(`A${r} ${r} 0 ${large} ${sweep > 0 ? 1 : 0} ${to(share)}`);
    },
  };
  for (const part of parts) trace(path, part);
  return data;
}
