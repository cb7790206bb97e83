import { wallLength } from '../../plan/items.ts';
import type { Mm, Opening, Shape, Wall } from '../../plan/model.ts';
import { ringFlaw } from '../../plane/simple-ring.ts';
import { formatLength, type LengthUnit } from '../../units/index.ts';
import type { Flaw } from '../problem.ts';

/** An opening may extend past its wall by this much, mm: the rounding of a length computed from the wall's ends. */
const OPENING_TOLERANCE: Mm = 1;

/**
 * Returns the flaw of an opening that extends past an end of its wall by more than 1 mm; empty if it does not. The text
 * shows lengths in the plan's unit.
 */
export function openingFlaws(opening: Opening, wall: Wall, unit: LengthUnit): readonly Flaw[] {
  const long = wallLength(wall);
  const before = -opening.offset;
  const past = opening.offset + opening.width - long;
  const expected = `inside the wall, 0 to ${formatMm(Math.max(0, long - opening.width))}`;
  const flaw = (over: Mm, end: string): Flaw => ({
    path: ['offset'],
    found: formatMm(opening.offset),
    expected,
    statement: `reaches ${formatLength(over, unit, 'up')} past the ${end} of its wall. Slide it back or shorten it.`,
  });
  if (opening.width > long + OPENING_TOLERANCE) {
    const [width, length] = [formatLength(opening.width, unit, 'up'), formatLength(long, unit, 'down')];
    const statement = `is ${width} wide and its wall is only ${length} long. Shorten it or put it on a longer wall.`;
    return [
      {
        path: ['width'],
        found: formatMm(opening.width),
        expected: `at most the length of the wall, ${formatMm(long)}`,
        statement,
      },
    ];
  }
  if (before > OPENING_TOLERANCE) return [flaw(before, 'start')];
  return past > OPENING_TOLERANCE ? [flaw(past, 'end')] : [];
}

/** Returns the flaw of a top below the bottom; empty if there is none. */
export function heightFlaws(
  { bottom, top }: { readonly bottom: Mm; readonly top: Mm },
  unit: LengthUnit,
): readonly Flaw[] {
  if (top >= bottom) return [];
  const [low, high] = [formatLength(top, unit), formatLength(bottom, unit)];
  return [
    {
      path: ['top'],
      found: formatMm(top),
      expected: `at least the bottom, ${formatMm(bottom)}`,
      statement: `has its top at ${low}, below its bottom at ${high}. Swap the two or measure again.`,
    },
  ];
}

/** Returns the flaw of a polygon that crosses or touches itself. A circle or box has no flaws. */
export function shapeFlaws(shape: Shape): readonly Flaw[] {
  if (!('polygon' in shape)) return [];
  const { points } = shape.polygon;
  const flaw = ringFlaw(points);
  if (!flaw) return [];
  const expected = 'an outline that does not touch itself';
  const path = ['shape', 'polygon', 'points'];
  if (flaw.kind === 'same-corner') {
    const [i, j] = flaw.corners;
    const statement = `has two corners on one spot: ${i + 1} and ${j + 1}. Take one of them out.`;
    return [{ path: [...path, j], found: 'the same point twice in a row', expected, statement }];
  }
  if (flaw.kind === 'too-intricate') {
    const statement = `has an outline of ${points.length.toLocaleString('en-US')} corners whose sides lie over and over one another: it cannot be checked. Draw it with fewer.`;
    return [{ path, found: 'an outline that cannot be checked', expected, statement }];
  }
  const [i, j] = flaw.edges;
  const side = (k: number) => `${k + 1}–${((k + 1) % points.length) + 1}`;
  const statement = `has an outline that touches itself: side ${side(i)} meets side ${side(j)}. Move a corner away.`;
  return [{ path, found: `sides ${side(i)} and ${side(j)} meet`, expected, statement }];
}

/** Formats a number of mm for `found` and `expected`, with at most 3 decimals. */
function formatMm(mm: Mm): string {
  return String(Math.round(mm * 1000) / 1000);
}
