/** Fixtures and objects: their outline as drawn, with a plain sign where the trade has one. */

import { isOverhead } from '../../geometry/plan/items.ts';
import type { Fixture, FixtureKind, Level, PlanObject, Shape } from '../../geometry/plan/model.ts';
import { shapeMiddle, shapeRing } from '../../geometry/plane/body.ts';
import type { Slot } from './placer.ts';
import { COLOUR, LINE_MM, SMALL_RATIO } from './style.ts';
import { element, group, line } from './svg.ts';
import { onPaper, ringsPath, toPaper, type View } from './view.ts';

export function drawThings({ fixtures, objects }: Level, view: View): string {
  return group(
    {},
    ...objects.map((object) => outline(view, object.shape, { ...objectStyle(view), ...broken(object) })),
    ...fixtures.map((fixture) => drawFixture(view, fixture)),
  );
}

/** What nothing may be written over. */
export function thingSlot(view: View, shape: Shape): Slot {
  const [x, y] = toPaper(view, shapeMiddle(shape));
  if ('circle' in shape) {
    const across = onPaper(view, shape.circle.radius * 2);
    return { x, y, width: across, height: across, turn: 0 };
  }
  if ('box' in shape) {
    const { width, depth, turn } = shape.box;
    return { x, y, width: onPaper(view, width), height: onPaper(view, depth), turn };
  }
  const corners = shape.polygon.points.map((p) => toPaper(view, p));
  const [xs, ys] = [corners.map(([px]) => px), corners.map(([, py]) => py)];
  return { x, y, width: Math.max(...xs) - Math.min(...xs), height: Math.max(...ys) - Math.min(...ys), turn: 0 };
}

function drawFixture(view: View, fixture: Fixture): string {
  const { kind, shape } = fixture;
  const style = { fill: COLOUR.well, 'stroke-width': LINE_MM.fixture, ...broken(fixture) };
  return outline(view, shape, style) + sign(view, kind, shape);
}

function outline(view: View, shape: Shape, style: Readonly<Record<string, string | number>>): string {
  const attributes = { fill: 'none', stroke: COLOUR.fixture, ...style };
  if ('circle' in shape) {
    const [cx, cy] = toPaper(view, shape.circle.center);
    return element('circle', { cx, cy, r: onPaper(view, shape.circle.radius), ...attributes });
  }
  return element('path', { d: ringsPath(view, [shapeRing(shape)]), 'stroke-linejoin': 'miter', ...attributes });
}

function objectStyle({ scale }: View): Readonly<Record<string, string | number>> {
  const isSmall = scale.ratio > SMALL_RATIO;
  return {
    stroke: isSmall ? COLOUR.hatch : COLOUR.fixture,
    'stroke-width': isSmall ? LINE_MM.rule * 0.7 : LINE_MM.object,
  };
}

function broken(thing: Fixture | PlanObject): Readonly<Record<string, string>> {
  return isOverhead(thing) ? { 'stroke-dasharray': '0.9 0.6' } : {};
}

/** Lines within the outline, in a frame that runs from −1 to 1 both ways. */
type Stroke = readonly [x1: number, y1: number, x2: number, y2: number];
const BLADES: readonly Stroke[] = [
  [-0.7, -0.7, 0.7, 0.7],
  [-0.7, 0.7, 0.7, -0.7],
];
const SIGNS: Partial<Record<FixtureKind, readonly Stroke[]>> = {
  'supply-register': slots([-0.5, 0, 0.5]),
  'return-grille': slots([-0.6, -0.2, 0.2, 0.6]),
  'exhaust-fan': BLADES,
  'ceiling-fan': BLADES,
  'portable-fan': BLADES,
  'floor-drain': [
    [-1, 0, 1, 0],
    [0, -1, 0, 1],
  ],
};

/** The slots of a grille. */
function slots(rows: readonly number[]): readonly Stroke[] {
  return rows.map((y) => [-0.8, y, 0.8, y]);
}

function sign(view: View, kind: FixtureKind, shape: Shape): string {
  if ('polygon' in shape) return '';
  const slot = thingSlot(view, shape);
  const style = { fill: 'none', stroke: COLOUR.fixture, 'stroke-width': LINE_MM.object };
  if (kind === 'sump-pit') {
    // The pit within its rim.
    return element('circle', { cx: slot.x, cy: slot.y, r: Math.min(slot.width, slot.height) * 0.34, ...style });
  }
  return (SIGNS[kind] ?? [])
    .map(([x1, y1, x2, y2]) => {
      const [a, b] = [inFrame(slot, x1, y1), inFrame(slot, x2, y2)];
      return line(a[0], a[1], b[0], b[1], style);
    })
    .join('');
}

function inFrame({ x, y, width, height, turn }: Slot, u: number, v: number): readonly [number, number] {
  const [dx, dy] = [(u * width) / 2, (v * height) / 2];
  const [cos, sin] = [Math.cos((turn * Math.PI) / 180), Math.sin((turn * Math.PI) / 180)];
  return [x + dx * cos - dy * sin, y + dx * sin + dy * cos];
}
