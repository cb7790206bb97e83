import type { Mm, XY } from '../plan/model.ts';
import { type Line, SAME } from './center-lines.ts';
import type { Piece } from './noded.ts';
import type { Ring } from './planar-turf.ts';
import {
  apart,
  cross,
  dot,
  lineCrossing,
  plus,
  quarter,
  ringArea,
  ringDistance,
  segmentDistance,
  vector,
} from './plane.ts';

/** The solid body of a wall piece or joint. */
export interface Body {
  /** One of its walls. */
  readonly wall: string;
  readonly ring: Ring;
  readonly outside: boolean;
}

/** One piece of wall, seen from a node at which it ends. */
interface Arm {
  readonly piece: Piece;
  /** Unit vector away from the node. */
  readonly away: XY;
  readonly line: Line;
}

/** Miter limit: a joint reaches at most this many half-thicknesses of the thicker wall from its node. */
const MITER_LIMIT = 10;
/** Sine of the angle between two walls below which they are collinear and leave no gap between their ends. */
const STRAIGHT = 1e-9;
/** A joint that extends beyond a wall by at most this is inside it, mm. */
const HIDDEN_DEPTH = 1e-6;
/** Merged points are at most this far apart along a wall, mm. */
const MERGED = 10 * SAME;
/** Joints are computed for every pair; with more walls at one node this takes too long. */
const MOST_ARMS = 48;

/** Returns whether a piece counts as outside for some of its walls. */
type IsOutside = (piece: Piece, of?: readonly Line[]) => boolean;

/** A piece of at most this length only connects walls that meet, mm: none of them coincide there. */
const CONNECTION = 2 * SAME;

/** Returns whether a wall on a piece counts as outside. Coinciding walls count alike: as outside if one of them does. */
function isOutsideWall(isOutside: IsOutside, piece: Piece, line: Line): boolean {
  const isMeeting = apart(piece.a, piece.b) <= CONNECTION;
  return isOutside(piece, isMeeting ? piece.lines.filter((other) => isSame(line, other)) : piece.lines);
}

/**
 * Returns the rectangles of all pieces and the joints of every two that meet; `wider` is added to each half-thickness,
 * mm.
 */
export function wallBodies(pieces: readonly Piece[], isOutside: IsOutside, wider: Mm = 0): Body[] {
  const rectangles = pieces.flatMap((piece) =>
    piece.lines.map((line) => ({
      wall: line.wall.id,
      outside: isOutsideWall(isOutside, piece, line),
      ring: rectangle(piece.a, piece.b, line.along, line.half + wider),
    })),
  );
  const joints = [...armsByNode(pieces).entries()].flatMap(([node, arms]) => jointsAt(node, arms, isOutside, wider));
  return [...rectangles, ...joints];
}

/** Returns the rectangle of a stretch of wall, with square ends. */
export function rectangle(a: XY, b: XY, along: XY, half: Mm): Ring {
  const aside = quarter(along);
  return [plus(a, aside, half), plus(b, aside, half), plus(b, aside, -half), plus(a, aside, -half)];
}

const rectangleOf = ({ along, half }: Line, a: XY, b: XY, wider: Mm): Ring => rectangle(a, b, along, half + wider);

function armsByNode(pieces: readonly Piece[]): Map<XY, Arm[]> {
  const byNode = new Map<XY, Arm[]>();
  for (const piece of pieces) {
    for (const line of distinct(piece.lines)) {
      const forth = dot(line.along, vector(piece.a, piece.b)) > 0 ? 1 : -1;
      for (const [node, sign] of [[piece.a, forth] as const, [piece.b, -forth] as const]) {
        const away: XY = [line.along[0] * sign, line.along[1] * sign];
        byNode.set(node, [...(byNode.get(node) ?? []), { piece, away, line }]);
      }
    }
  }
  return byNode;
}

/** Of the lines of one piece, returns those to be joined to others, one per thickness and direction. */
function distinct(lines: readonly Line[]): Line[] {
  return lines.filter(
    (line, i) => line.corners && !lines.slice(0, i).some((other) => other.corners && isSame(line, other)),
  );
}

function isSame(one: Line, two: Line): boolean {
  return one.half === two.half && Math.abs(cross(one.along, two.along)) < STRAIGHT;
}

function jointsAt(node: XY, arms: readonly Arm[], isOutside: IsOutside, wider: Mm): Body[] {
  if (arms.length > MOST_ARMS) throw new Error(`more than ${MOST_ARMS} walls meet at one place`);
  // A joint inside a wall has no face of its own; an outside joint is kept unless an outside piece contains it.
  const whole = arms.flatMap(({ piece: { lines } }) =>
    lines.map((line) => rectangleOf(line, line.from, line.to, wider)),
  );
  const outer = arms
    .filter(({ piece, line }) => isOutsideWall(isOutside, piece, line))
    .map(({ piece: { a, b }, line }) => rectangleOf(line, a, b, wider));
  const isHidden = (ring: Ring, outside: boolean) =>
    (outside ? outer : whole).some((one) => ring.every((p) => ringDistance(p, one) <= HIDDEN_DEPTH));
  return arms.flatMap((one, i) =>
    arms.slice(0, i).flatMap((two): Body[] => {
      // Coinciding walls are one piece and have no joint.
      if (one.piece === two.piece) return [];
      const ring = jointRing(meeting(node, one, two), one, two, wider);
      const outside = isOutsideWall(isOutside, one.piece, one.line) && isOutsideWall(isOutside, two.piece, two.line);
      const isSeen = ring.length >= 3 && ringArea(ring) > 0 && !isHidden(ring, outside);
      return isSeen ? [{ wall: one.line.wall.id, outside, ring }] : [];
    }),
  );
}

/**
 * Returns where two lines meet, ignoring other walls: usually the node, but other walls may have merged nodes. Their
 * crossing, or an end of one on the other, whichever is nearest to the node. Next to such an end, the crossing is the
 * exact point.
 */
function meeting(node: XY, { line: one }: Arm, { line: two }: Arm): XY {
  const crossing = lineCrossing(one.from, one.to, two.from, two.to);
  const isOn = (p: XY, { from, to }: Line) => segmentDistance(p, from, to) <= SAME;
  const ends = [
    ...[one.from, one.to].filter((end) => isOn(end, two)),
    ...[two.from, two.to].filter((end) => isOn(end, one)),
  ];
  if (ends.length === 0) return crossing && isOn(crossing, one) && isOn(crossing, two) ? crossing : node;
  const place = ends.reduce((best, end) => (apart(end, node) < apart(best, node) ? end : best));
  return crossing && apart(crossing, place) <= MERGED ? crossing : place;
}

/**
 * Returns the gap between the square ends of two walls on the outer side of their corner: the points within the
 * half-thickness of both, between their two outer normals. Empty for parallel walls.
 */
function jointRing(node: XY, one: Arm, two: Arm, wider: Mm): Ring {
  const turn = cross(one.away, two.away);
  if (Math.abs(turn) < STRAIGHT) return [];
  const side = Math.sign(turn);
  const [n1, n2] = [quarter(one.away), quarter(two.away)].map((n, i): XY => {
    const sign = i === 0 ? -side : side;
    return [n[0] * sign, n[1] * sign];
  }) as [XY, XY];
  const [h1, h2] = [one.line.half + wider, two.line.half + wider];
  const cosine = dot(n1, n2);
  const [foot1, foot2] = [plus(node, n1, h1), plus(node, n2, h2)];
  // At a small angle the thick end protrudes beside the thin wall's face, and that face bounds the gap.
  if (h1 * cosine >= h2) return [node, plus(node, n1, h2 / cosine), foot2];
  if (h2 * cosine >= h1) return [node, foot1, plus(node, n2, h1 / cosine)];
  const most = MITER_LIMIT * Math.max(h1, h2);
  const beyond = (h2 - h1 * cosine) / Math.abs(turn);
  if (Math.hypot(h1, beyond) <= most) return [node, foot1, plus(foot1, one.away, -beyond), foot2];
  const reach = (h: Mm) => -Math.sqrt(most * most - h * h);
  return [node, foot1, plus(foot1, one.away, reach(h1)), plus(foot2, two.away, reach(h2)), foot2];
}
