import type { Piece } from './outline.ts';

/** Curves that miss each other by less than this, mm, count as touching: far above rounding, far below any tape. */
const TANGENT = 1e-7;

/** Receives a parameter (0…1 along its piece) at which a piece is to be cut. */
export type Cut = (piece: number, parameter: number) => void;

/**
 * Reports where two pieces meet: crossings, touchings, and the ends of what they share when they run on one another.
 * Parameters outside 0…1 are left out; one within rounding of an end may or may not be reported.
 */
export function cutPair(p: Piece, q: Piece, i: number, j: number, cut: Cut): void {
  if (p.radius === 0) {
    if (q.radius === 0) cutLines(p, q, i, j, cut);
    else cutLineArc(p, q, i, j, cut);
  } else if (q.radius === 0) cutLineArc(q, p, j, i, cut);
  else cutArcs(p, q, i, j, cut);
}

function cutLines(p: Piece, q: Piece, i: number, j: number, cut: Cut): void {
  const px = p.x1 - p.x0;
  const py = p.y1 - p.y0;
  const qx = q.x1 - q.x0;
  const qy = q.y1 - q.y0;
  const ox = q.x0 - p.x0;
  const oy = q.y0 - p.y0;
  const denominator = px * qy - py * qx;
  const pp = px * px + py * py;
  const qq = qx * qx + qy * qy;
  // Parallel, or so nearly that the two stay within touching distance over the whole length.
  if (denominator * denominator <= TANGENT * TANGENT * Math.max(pp, qq)) {
    if (Math.abs(px * oy - py * ox) > TANGENT * 10 * Math.sqrt(pp)) return;
    emit(i, (ox * px + oy * py) / pp, cut);
    emit(i, ((ox + qx) * px + (oy + qy) * py) / pp, cut);
    emit(j, -(ox * qx + oy * qy) / qq, cut);
    emit(j, ((px - ox) * qx + (py - oy) * qy) / qq, cut);
    return;
  }
  const t = (ox * qy - oy * qx) / denominator;
  const u = (ox * py - oy * px) / denominator;
  // A hair of slack: an end that lies on the other piece must cut it.
  const slackT = TANGENT / Math.sqrt(pp);
  const slackU = TANGENT / Math.sqrt(qq);
  if (t < -slackT || t > 1 + slackT || u < -slackU || u > 1 + slackU) return;
  emit(i, t, cut);
  emit(j, u, cut);
}

function cutLineArc(line: Piece, arc: Piece, i: number, j: number, cut: Cut): void {
  const dx = line.x1 - line.x0;
  const dy = line.y1 - line.y0;
  const length = Math.sqrt(dx * dx + dy * dy);
  if (length === 0) return;
  const ox = arc.cx - line.x0;
  const oy = arc.cy - line.y0;
  const foot = (ox * dx + oy * dy) / length;
  const off = (ox * dy - oy * dx) / length;
  const r = arc.radius;
  const over = Math.abs(off) - r;
  if (over > TANGENT) return;
  const chord = over > -TANGENT ? 0 : Math.sqrt(r * r - off * off);
  onLineAndArc(line, arc, i, j, (foot - chord) / length, length, cut);
  if (chord > 0) onLineAndArc(line, arc, i, j, (foot + chord) / length, length, cut);
}

function onLineAndArc(line: Piece, arc: Piece, i: number, j: number, t: number, length: number, cut: Cut): void {
  const slack = TANGENT / length;
  if (t < -slack || t > 1 + slack) return;
  const x = line.x0 + (line.x1 - line.x0) * t;
  const y = line.y0 + (line.y1 - line.y0) * t;
  const u = arcParameter(arc, x, y);
  if (u < 0) return;
  emit(i, t, cut);
  emit(j, u, cut);
}

function cutArcs(p: Piece, q: Piece, i: number, j: number, cut: Cut): void {
  const dx = q.cx - p.cx;
  const dy = q.cy - p.cy;
  const d = Math.sqrt(dx * dx + dy * dy);
  if (d <= TANGENT) {
    if (Math.abs(p.radius - q.radius) > TANGENT * 10) return;
    emit(i, arcParameter(p, q.x0, q.y0), cut);
    emit(i, arcParameter(p, q.x1, q.y1), cut);
    emit(j, arcParameter(q, p.x0, p.y0), cut);
    emit(j, arcParameter(q, p.x1, p.y1), cut);
    return;
  }
  const apart = d - (p.radius + q.radius);
  const within = Math.abs(p.radius - q.radius) - d;
  if (apart > TANGENT || within > TANGENT) return;
  const a = (d * d + p.radius * p.radius - q.radius * q.radius) / (2 * d);
  const touching = apart > -TANGENT || within > -TANGENT;
  const h = touching ? 0 : Math.sqrt(Math.max(0, p.radius * p.radius - a * a));
  const ux = dx / d;
  const uy = dy / d;
  for (const side of h > 0 ? [-h, h] : [0]) {
    const x = p.cx + ux * a - uy * side;
    const y = p.cy + uy * a + ux * side;
    const t = arcParameter(p, x, y);
    const u = arcParameter(q, x, y);
    if (t < 0 || u < 0) continue;
    emit(i, t, cut);
    emit(j, u, cut);
  }
}

/** Where on the arc the direction of (x, y) lies, 0…1; −1 when it is not on the arc. */
function arcParameter(arc: Piece, x: number, y: number): number {
  const slack = TANGENT / arc.radius;
  let turn = (Math.atan2(y - arc.cy, x - arc.cx) - arc.start) % (2 * Math.PI);
  if (turn < -slack) turn += 2 * Math.PI;
  // The last hair of a full turn is the start.
  if (turn > 2 * Math.PI - slack) turn -= 2 * Math.PI;
  return turn <= arc.sweep + slack ? Math.max(0, turn / arc.sweep) : -1;
}

function emit(piece: number, parameter: number, cut: Cut): void {
  if (parameter > 0 && parameter < 1) cut(piece, parameter);
}
