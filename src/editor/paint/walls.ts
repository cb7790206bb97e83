import type { LevelModel, OpeningBody, WallJoint } from '../../../geometry/level/types.ts';
import type { XY } from '../../../geometry/plan/model.ts';
import { doorSwing, jambCorners } from '../../../geometry/snap/opening-symbol.ts';
import { LINE_PX } from '../../theme/tokens.ts';
import { openingExtent, wallExtent } from '../extents.ts';
import { isSeen, lengthPx, type Pen, px, stroke, traceLine, traceRing } from './pen.ts';

/** Walls filled, with openings cut clean. */
export function paintWalls(pen: Pen, model: LevelModel, chosen: ReadonlySet<string>): void {
  const { ctx, theme } = pen;
  ctx.lineJoin = 'miter';
  const seen = model.pieces.filter((piece) => isSeen(pen, wallExtent(piece)));
  const joints = model.joints.filter((joint) => isSeen(pen, wallExtent(joint)));
  const isChosen = ({ walls }: WallJoint) => walls.every(({ id }) => chosen.has(id));
  for (const [colour, standing] of [
    [theme.poche, [...seen.filter(({ wall }) => !chosen.has(wall.id)), ...joints.filter((one) => !isChosen(one))]],
    [theme.accent, [...seen.filter(({ wall }) => chosen.has(wall.id)), ...joints.filter(isChosen)]],
  ] as const) {
    ctx.beginPath();
    for (const { body } of standing) traceRing(pen, body);
    ctx.fillStyle = colour;
    ctx.fill('nonzero');
    // A hair of outline closes the seams between pieces.
    stroke(pen, colour, LINE_PX.wall / 2);
  }
  paintWallsWithoutPieces(pen, model, chosen);
  for (const opening of model.openings) {
    if (isSeen(pen, openingExtent(opening))) paintOpening(pen, model, opening, chosen.has(opening.opening.id));
  }
}

/** A wall too short to have a body is still shown, as a point that can be taken hold of. */
function paintWallsWithoutPieces(pen: Pen, model: LevelModel, chosen: ReadonlySet<string>): void {
  const drawn = new Set(model.pieces.map(({ wall }) => wall.id));
  for (const { id, from, to } of model.level.walls) {
    if (drawn.has(id)) continue;
    pen.ctx.beginPath();
    traceLine(pen, [from, to]);
    stroke(pen, chosen.has(id) ? pen.theme.accent : pen.theme.poche, LINE_PX.wall * 2);
  }
}

function paintOpening(pen: Pen, model: LevelModel, { opening, body }: OpeningBody, chosen: boolean): void {
  const corners = jambCorners(model.level, opening);
  if (!corners) return;
  const { ctx, theme } = pen;
  const colour = chosen ? theme.accent : theme.fixture;
  ctx.beginPath();
  traceRing(pen, body);
  ctx.fillStyle = theme.paper;
  ctx.fill();
  stroke(pen, theme.paper, LINE_PX.wall);
  const { near, far } = corners;
  ctx.beginPath();
  traceLine(pen, near);
  traceLine(pen, far);
  stroke(pen, colour, LINE_PX.fixture);
  if (opening.kind === 'window') paintSash(pen, near, far, colour);
  else if (opening.kind === 'passage') paintPassage(pen, near, far, colour);
  else paintDoor(pen, model, opening.id, colour);
}

/** The frame along both faces and the glass between. */
function paintSash(pen: Pen, near: readonly [XY, XY], far: readonly [XY, XY], colour: string): void {
  pen.ctx.beginPath();
  for (const share of [0, 0.42, 0.58, 1]) traceLine(pen, [between(near, share), between(far, share)]);
  stroke(pen, colour, LINE_PX.fixture * 0.75);
}

function paintPassage(pen: Pen, near: readonly [XY, XY], far: readonly [XY, XY], colour: string): void {
  pen.ctx.beginPath();
  for (const share of [0, 1]) traceLine(pen, [between(near, share), between(far, share)]);
  stroke(pen, colour, LINE_PX.fixture * 0.6, [4, 4]);
}

/** The leaf standing open and the quarter that it sweeps. */
function paintDoor(pen: Pen, model: LevelModel, id: string, colour: string): void {
  const swing = doorSwing(model, id);
  if (!swing) return;
  const [hx, hy] = px(pen, swing.hinge);
  pen.ctx.beginPath();
  traceLine(pen, [swing.hinge, swing.open]);
  stroke(pen, colour, LINE_PX.fixture * 1.2);
  pen.ctx.beginPath();
  pen.ctx.arc(hx, hy, lengthPx(pen, swing.width), swing.start, swing.start + swing.sweep, swing.sweep < 0);
  stroke(pen, colour, LINE_PX.fixture * 0.5);
}

function between([a, b]: readonly [XY, XY], share: number): XY {
  return [a[0] + (b[0] - a[0]) * share, a[1] + (b[1] - a[1]) * share];
}
