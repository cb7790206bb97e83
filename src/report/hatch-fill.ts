/** The hatches as SVG patterns, in the size that they have on screen at 96 px to the inch. */
import { HATCHES, type HatchName } from '../theme/hatches.ts';
import { COLOUR, PX_MM } from './style.ts';
import { element } from './svg.ts';

/** `url(#…)` of a hatch, for `fill`. */
export function hatchFill(name: HatchName): string {
  return `url(#hatch-${name})`;
}

/** The definitions of the hatches that are used. */
export function hatchDefinitions(names: Iterable<HatchName>): string {
  return [...names].map(definition).join('');
}

function definition(name: HatchName): string {
  const { width, height, turn, stroke, fill, weight } = HATCHES[name];
  const marks = [];
  if (stroke) marks.push(element('path', { d: stroke, fill: 'none', stroke: COLOUR.hatch, 'stroke-width': weight }));
  if (fill) marks.push(element('path', { d: fill, fill: COLOUR.hatch }));
  return element(
    'pattern',
    {
      id: `hatch-${name}`,
      width,
      height,
      patternUnits: 'userSpaceOnUse',
      patternTransform: `scale(${PX_MM}) rotate(${turn})`,
    },
    ...marks,
  );
}
