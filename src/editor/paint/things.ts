import { isOverhead } from '../../../geometry/plan/items.ts';
import type { Fixture, Level, PlanObject, Shape, XY } from '../../../geometry/plan/model.ts';
import { shapeMiddle, shapeRing } from '../../../geometry/plane/body.ts';
import { LINE_PX } from '../../theme/tokens.ts';
import { thingExtent } from '../extents.ts';
import { isSeen, lengthPx, type Pen, px, stroke, traceLine, traceRing } from './pen.ts';

/** Objects lie under fixtures, and are drawn lighter. */
export function paintThings(pen: Pen, level: Level, chosen: ReadonlySet<string>): void {
  for (const object of level.objects) {
    if (isSeen(pen, thingExtent(object))) paintObject(pen, object, chosen.has(object.id));
  }
  for (const fixture of level.fixtures) {
    if (isSeen(pen, thingExtent(fixture))) paintFixture(pen, fixture, chosen.has(fixture.id));
  }
}

function paintObject(pen: Pen, { shape }: PlanObject, chosen: boolean): void {
  traceShape(pen, shape);
  pen.ctx.globalAlpha = 0.85;
  pen.ctx.fillStyle = pen.theme.well;
  pen.ctx.fill();
  pen.ctx.globalAlpha = 1;
  stroke(pen, chosen ? pen.theme.accent : pen.theme.edge, chosen ? LINE_PX.fixture * 1.6 : LINE_PX.fixture * 0.7);
}

function paintFixture(pen: Pen, fixture: Fixture, chosen: boolean): void {
  const { theme } = pen;
  const colour = chosen ? theme.accent : theme.fixture;
  if (fixture.stream) paintStream(pen, fixture, colour);
  traceShape(pen, fixture.shape);
  pen.ctx.fillStyle = theme.fixtureFill;
  pen.ctx.fill();
  stroke(pen, colour, chosen ? LINE_PX.fixture * 1.6 : LINE_PX.fixture, isOverhead(fixture) ? [5, 4] : []);
  paintMark(pen, fixture, colour);
}

/** A sign inside the outline for what is known by one: a pit within a rim, a drain's cross, the blades of a grille. */
function paintMark(pen: Pen, { kind, shape }: Fixture, colour: string): void {
  const { ctx } = pen;
  ctx.beginPath();
  if ('circle' in shape) {
    const [x, y] = px(pen, shape.circle.center);
    const r = lengthPx(pen, shape.circle.radius);
    if (kind === 'sump-pit') ctx.arc(x, y, r * 0.72, 0, 2 * Math.PI);
    else if (kind === 'floor-drain') cross(ctx, x, y, r * 0.7);
    else if (kind === 'mitigation-pipe') ctx.arc(x, y, r * 0.5, 0, 2 * Math.PI);
    else return;
  } else if (kind === 'supply-register' || kind === 'return-grille') {
    for (const line of blades(shape)) traceLine(pen, line);
  } else return;
  stroke(pen, colour, LINE_PX.fixture * 0.6);
}

function cross(ctx: CanvasRenderingContext2D, x: number, y: number, r: number): void {
  ctx.moveTo(x - r, y);
  ctx.lineTo(x + r, y);
  ctx.moveTo(x, y - r);
  ctx.lineTo(x, y + r);
}

/** Four lines across the longer side of a box. */
function blades(shape: Shape): readonly (readonly XY[])[] {
  const [a, b, c, d] = shapeRing(shape);
  if (!a || !b || !c || !d || !('box' in shape)) return [];
  const [from, to] =
    shape.box.width >= shape.box.depth
      ? [
          [a, b],
          [d, c],
        ]
      : [
          [a, d],
          [b, c],
        ];
  return [0.2, 0.4, 0.6, 0.8].map((share) => [between(from, share), between(to, share)]);
}

function between(line: readonly XY[], share: number): XY {
  const [a, b] = line as readonly [XY, XY];
  return [a[0] + (b[0] - a[0]) * share, a[1] + (b[1] - a[1]) * share];
}

/** Shares of the reach at which the air is drawn as waves. */
const WAVES = [0.4, 0.6, 0.8] as const;
const ARROW_PX = 7;

/** The sector that it blows over: its edge, waves across it, and an arrow along its middle. */
function paintStream(pen: Pen, { shape, stream }: Fixture, colour: string): void {
  if (!stream) return;
  const { ctx } = pen;
  const [x, y] = px(pen, shapeMiddle(shape));
  const half = (Math.min(stream.spread, 360) * Math.PI) / 360;
  const middle = (stream.direction * Math.PI) / 180;
  const reach = lengthPx(pen, stream.reach);
  ctx.beginPath();
  if (half < Math.PI) ctx.moveTo(x, y);
  ctx.arc(x, y, reach, middle - half, middle + half);
  ctx.closePath();
  stroke(pen, colour, LINE_PX.fixture * 0.8, [5, 3]);
  for (const share of WAVES) {
    ctx.beginPath();
    ctx.arc(x, y, reach * share, middle - half * 0.7, middle + half * 0.7);
    stroke(pen, colour, LINE_PX.fixture * 0.4);
  }
  paintArrow(
    pen,
    [x + reach * 0.3 * Math.cos(middle), y + reach * 0.3 * Math.sin(middle)],
    reach * 0.6,
    middle,
    colour,
  );
}

function paintArrow(pen: Pen, [x, y]: XY, length: number, angle: number, colour: string): void {
  const { ctx } = pen;
  const [tx, ty] = [x + length * Math.cos(angle), y + length * Math.sin(angle)];
  ctx.beginPath();
  ctx.moveTo(x, y);
  ctx.lineTo(tx, ty);
  for (const side of [2.6, -2.6]) {
    ctx.moveTo(tx, ty);
    ctx.lineTo(tx + ARROW_PX * Math.cos(angle + side), ty + ARROW_PX * Math.sin(angle + side));
  }
  stroke(pen, colour, LINE_PX.fixture * 0.8);
}

export function traceShape(pen: Pen, shape: Shape): void {
  pen.ctx.beginPath();
  if ('circle' in shape) {
    const [x, y] = px(pen, shape.circle.center);
    pen.ctx.arc(x, y, lengthPx(pen, shape.circle.radius), 0, 2 * Math.PI);
  } else {
    traceRing(pen, shapeRing(shape));
  }
}
