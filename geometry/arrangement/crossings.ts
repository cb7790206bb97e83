import type { Mm } from '../plane/types.ts';
import { at, CX, CY, RADIUS, START, SWEEP, X0, X1, Y0, Y1 } from './pieces.ts';

/** Curves that miss each other by less than this touch, mm: far above rounding, far below any tape. */
const TOUCH_TOLERANCE = 1e-7;

/** Squared sine of the angle below which the ends are tested individually. */
const SMALL_ANGLE = 1e-6;

/** An end this close to a line lies on it, mm: slightly more than `COINCIDENT`. */
const END_TOLERANCE = 2e-6;

/** Receives the offset of a piece and the parameter, 0…1 along it, of a cut. */
export type Cut = (piece: number, parameter: number) => void;

/**
 * Reports where two pieces of a flat array meet: crossings, tangencies, and the ends of a shared stretch when they
 * coincide. `i` and `j` are offsets into `p`. A cut within rounding of an end may or may not be reported.
 */
export function cutPair(p: Float64Array, i: number, j: number, cut: Cut): void {
  if (p[i + RADIUS] === 0) {
    if (p[j + RADIUS] === 0) cutLines(p, i, j, cut);
    else cutLineArc(p, i, j, cut);
  } else if (p[j + RADIUS] === 0) cutLineArc(p, j, i, cut);
  else cutArcs(p, i, j, cut);
}

function cutLines(p: Float64Array, i: number, j: number, cut: Cut): void {
  const px = at(p, i + X1) - at(p, i + X0);
  const py = at(p, i + Y1) - at(p, i + Y0);
  const qx = at(p, j + X1) - at(p, j + X0);
  const qy = at(p, j + Y1) - at(p, j + Y0);
  const ox = at(p, j + X0) - at(p, i + X0);
  const oy = at(p, j + Y0) - at(p, i + Y0);
  const denominator = px * qy - py * qx;
  const pp = px * px + py * py;
  const qq = qx * qx + qy * qy;
  // Parallel, or so nearly that the two stay within the touch tolerance over their whole length.
  if (denominator * denominator <= TOUCH_TOLERANCE * TOUCH_TOLERANCE * Math.max(pp, qq)) {
    if (Math.abs(px * oy - py * ox) > TOUCH_TOLERANCE * 10 * Math.sqrt(pp)) return;
    addCut(i, (ox * px + oy * py) / pp, cut);
    addCut(i, ((ox + qx) * px + (oy + qy) * py) / pp, cut);
    addCut(j, -(ox * qx + oy * qy) / qq, cut);
    addCut(j, ((px - ox) * qx + (py - oy) * qy) / qq, cut);
    return;
  }
  // At a small angle an end may lie within tolerance of the other piece, far from their crossing.
  if (denominator * denominator <= SMALL_ANGLE * pp * qq) {
    cutAtEnd(i, ox, oy, px, py, pp, cut);
    cutAtEnd(i, ox + qx, oy + qy, px, py, pp, cut);
    cutAtEnd(j, -ox, -oy, qx, qy, qq, cut);
    cutAtEnd(j, px - ox, py - oy, qx, qy, qq, cut);
  }
  const t = (ox * qy - oy * qx) / denominator;
  const u = (ox * py - oy * px) / denominator;
  // Tolerance in parameters: an end that lies on the other piece must cut it.
  const slackT = TOUCH_TOLERANCE / Math.sqrt(pp);
  const slackU = TOUCH_TOLERANCE / Math.sqrt(qq);
  if (t < -slackT || t > 1 + slackT || u < -slackU || u > 1 + slackU) return;
  addCut(i, t, cut);
  addCut(j, u, cut);
}

/** Cuts a line where an end of another, at (x, y) from its start, lies on it. */
function cutAtEnd(line: number, x: Mm, y: Mm, dx: Mm, dy: Mm, lengthSq: number, cut: Cut): void {
  const off = dx * y - dy * x;
  if (off * off <= END_TOLERANCE * END_TOLERANCE * lengthSq) addCut(line, (x * dx + y * dy) / lengthSq, cut);
}

function cutLineArc(p: Float64Array, line: number, arc: number, cut: Cut): void {
  const x0 = at(p, line + X0);
  const y0 = at(p, line + Y0);
  const dx = at(p, line + X1) - x0;
  const dy = at(p, line + Y1) - y0;
  const length = Math.sqrt(dx * dx + dy * dy);
  if (length === 0) return;
  const ox = at(p, arc + CX) - x0;
  const oy = at(p, arc + CY) - y0;
  const foot = (ox * dx + oy * dy) / length;
  const off = (ox * dy - oy * dx) / length;
  const r = at(p, arc + RADIUS);
  const over = Math.abs(off) - r;
  if (over > TOUCH_TOLERANCE) return;
  const chord = over > -TOUCH_TOLERANCE ? 0 : Math.sqrt(r * r - off * off);
  onLineAndArc(p, line, arc, (foot - chord) / length, length, cut);
  if (chord > 0) onLineAndArc(p, line, arc, (foot + chord) / length, length, cut);
}

function onLineAndArc(p: Float64Array, line: number, arc: number, t: number, length: number, cut: Cut): void {
  const slack = TOUCH_TOLERANCE / length;
  if (t < -slack || t > 1 + slack) return;
  const x0 = at(p, line + X0);
  const y0 = at(p, line + Y0);
  const x = x0 + (at(p, line + X1) - x0) * t;
  const y = y0 + (at(p, line + Y1) - y0) * t;
  const u = arcParameter(p, arc, x, y);
  if (u < 0) return;
  addCut(line, t, cut);
  addCut(arc, u, cut);
}

function cutArcs(p: Float64Array, i: number, j: number, cut: Cut): void {
  const cx = at(p, i + CX);
  const cy = at(p, i + CY);
  const dx = at(p, j + CX) - cx;
  const dy = at(p, j + CY) - cy;
  const r = at(p, i + RADIUS);
  const s = at(p, j + RADIUS);
  const d = Math.sqrt(dx * dx + dy * dy);
  if (d <= TOUCH_TOLERANCE) {
    if (Math.abs(r - s) > TOUCH_TOLERANCE * 10) return;
    addCut(i, arcParameter(p, i, at(p, j + X0), at(p, j + Y0)), cut);
    addCut(i, arcParameter(p, i, at(p, j + X1), at(p, j + Y1)), cut);
    addCut(j, arcParameter(p, j, at(p, i + X0), at(p, i + Y0)), cut);
    addCut(j, arcParameter(p, j, at(p, i + X1), at(p, i + Y1)), cut);
    return;
  }
  const apart = d - (r + s);
  const within = Math.abs(r - s) - d;
  if (apart > TOUCH_TOLERANCE || within > TOUCH_TOLERANCE) return;
  const a = (d * d + r * r - s * s) / (2 * d);
  const touching = apart > -TOUCH_TOLERANCE || within > -TOUCH_TOLERANCE;
  const h = touching ? 0 : Math.sqrt(Math.max(0, r * r - a * a));
  const ux = dx / d;
  const uy = dy / d;
  onBothArcs(p, i, j, cx + ux * a - uy * h, cy + uy * a + ux * h, cut);
  if (h > 0) onBothArcs(p, i, j, cx + ux * a + uy * h, cy + uy * a - ux * h, cut);
}

function onBothArcs(p: Float64Array, i: number, j: number, x: number, y: number, cut: Cut): void {
  const t = arcParameter(p, i, x, y);
  if (t < 0) return;
  const u = arcParameter(p, j, x, y);
  if (u < 0) return;
  addCut(i, t, cut);
  addCut(j, u, cut);
}

/** Returns the parameter, 0…1, of the direction (x, y) on the arc; −1 when it is not on the arc. */
function arcParameter(p: Float64Array, arc: number, x: number, y: number): number {
  const slack = TOUCH_TOLERANCE / at(p, arc + RADIUS);
  const sweep = at(p, arc + SWEEP);
  let turn = (Math.atan2(y - at(p, arc + CY), x - at(p, arc + CX)) - at(p, arc + START)) % (2 * Math.PI);
  if (turn < -slack) turn += 2 * Math.PI;
  // Because of rounding, an angle just below a full circle means the start of the arc.
  if (turn > 2 * Math.PI - slack) turn -= 2 * Math.PI;
  return turn <= sweep + slack ? Math.max(0, turn / sweep) : -1;
}

function addCut(piece: number, parameter: number, cut: Cut): void {
  if (parameter > 0 && parameter < 1) cut(piece, parameter);
}
