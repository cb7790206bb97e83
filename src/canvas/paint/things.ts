import { shapeBody, shapeMiddle, shapeRing } from '../../../geometry/body.ts';
import type { Fixture, Level, PlanObject, Shape, XY } from '../../../geometry/plan/model.ts';
import { LINE_PX } from '../../design/tokens.ts';
import { toPlan } from '../../state/viewport.ts';
import { firstFree, type Places } from './names.ts';
import { lengthPx, type Pen, px, stroke, traceLine, traceRing } from './pen.ts';
import { drawText, FINE, SMALL, type TextStyle, textWidth } from './text.ts';

/** Objects lie under fixtures, and are drawn lighter. */
export function paintThings(pen: Pen, level: Level, chosen: ReadonlySet<string>): void {
  for (const object of level.objects) paintObject(pen, object, chosen.has(object.id));
  for (const fixture of level.fixtures) paintFixture(pen, fixture, chosen.has(fixture.id));
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
  stroke(pen, colour, chosen ? LINE_PX.fixture * 1.6 : LINE_PX.fixture, overhead(fixture) ? [5, 4] : []);
  paintMark(pen, fixture, colour);
}

/** What hangs above head height is drawn broken, as things above the cut of a plan are. */
function overhead({ bottom }: Fixture): boolean {
  return bottom > 1829; // 72 in
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

function paintStream(pen: Pen, { shape, stream }: Fixture, colour: string): void {
  if (!stream) return;
  const [x, y] = px(pen, shapeMiddle(shape));
  const half = (stream.spread * Math.PI) / 360;
  const middle = (stream.direction * Math.PI) / 180;
  pen.ctx.beginPath();
  pen.ctx.moveTo(x, y);
  pen.ctx.arc(x, y, lengthPx(pen, stream.reach), middle - half, middle + half);
  pen.ctx.closePath();
  stroke(pen, colour, LINE_PX.fixture * 0.6, [2, 4]);
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

/** Every thing's plain name, inside it where it fits, else beside it; left out where there is no room. */
export function paintThingNames(
  pen: Pen,
  level: Level,
  /** From the fullest to the shortest: the first that finds room is written. */
  namesOf: (thing: Fixture | PlanObject) => readonly string[],
  /** The room at a point of the plan; null for none. */
  roomAt: (at: XY) => unknown,
  places: Places,
): void {
  const { theme } = pen;
  for (const fixture of level.fixtures) {
    nameThing(pen, namesOf(fixture), fixture.shape, { ...SMALL, colour: theme.ink, halo: theme.paper }, roomAt, places);
  }
  for (const object of level.objects) {
    nameThing(
      pen,
      namesOf(object),
      object.shape,
      { ...FINE, colour: theme.inkSoft, halo: theme.paper },
      roomAt,
      places,
    );
  }
}

function nameThing(
  pen: Pen,
  names: readonly string[],
  shape: Shape,
  style: TextStyle,
  roomAt: (at: XY) => unknown,
  places: Places,
): void {
  for (const name of names) {
    const at = placeForName(pen, name, shape, style, roomAt, places);
    if (!at) continue;
    drawText(pen, name, at, style);
    return;
  }
}

function placeForName(
  pen: Pen,
  text: string,
  shape: Shape,
  style: TextStyle,
  roomAt: (at: XY) => unknown,
  places: Places,
): XY | null {
  const { minX, minY, maxX, maxY } = shapeBody(shape).extent;
  const [left, top] = px(pen, [minX, minY]);
  const [right, bottom] = px(pen, [maxX, maxY]);
  const width = textWidth(pen, text, style) + 6;
  const height = style.sizePx + 5;
  const [x, y] = [(left + right) / 2, (top + bottom) / 2];
  const inside = right - left > width && bottom - top > height;
  const beside: XY[] = [
    [x, bottom + height / 2 + 2],
    [right + width / 2 + 3, y],
    [left - width / 2 - 3, y],
    [x, top - height / 2 - 2],
    // Below and above again, its end or its beginning at the thing: for a thing near a corner.
    [right - width / 2 + 6, bottom + height / 2 + 2],
    [left + width / 2 - 6, bottom + height / 2 + 2],
    [right - width / 2 + 6, top - height / 2 - 2],
    [left + width / 2 - 6, top - height / 2 - 2],
    [right + width / 2 + 3, bottom + height / 2],
    [left - width / 2 - 3, bottom + height / 2],
  ];
  // The ground of the thing itself is taken by it, and its own name may stand there.
  return inside ? [x, y] : firstFree(places, inOneRoom(pen, shape, beside, width, roomAt), width, height);
}

/** Of places for a name those that lie in the thing's own room: a name over a wall is hard to read, in the next room it misleads. */
function inOneRoom(
  pen: Pen,
  shape: Shape,
  middles: readonly XY[],
  width: number,
  roomAt: (at: XY) => unknown,
): readonly XY[] {
  const room = roomAt(shapeMiddle(shape));
  if (!room) return middles;
  const at = (x: number, y: number) => roomAt(toPlan(pen.view, [x, y]));
  return middles.filter(([x, y]) => [-0.5, 0, 0.5].every((share) => at(x + share * width, y) === room));
}

/** Keeps the ground of every thing free of other names. */
export function keepThings(pen: Pen, level: Level, places: Places): void {
  for (const { shape } of [...level.fixtures, ...level.objects]) {
    const { minX, minY, maxX, maxY } = shapeBody(shape).extent;
    const middle = px(pen, [(minX + maxX) / 2, (minY + maxY) / 2]);
    // A little less than the thing: a name may come up to its edge.
    places.avoid(middle, lengthPx(pen, maxX - minX) - 6, lengthPx(pen, maxY - minY) - 6);
  }
}
