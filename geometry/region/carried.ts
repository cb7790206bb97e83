import { type Body, ringBody } from '../body.ts';
import type { Ring } from '../level/types.ts';
import type { Mm, XY } from '../plan/model.ts';
import { remembered } from '../remembered.ts';
import { signedArea } from '../ring.ts';

/** Chords of a round table: at a radius of 1 m they lie up to 0.3 mm inside the circle, on the safe side. */
const CHORDS = 128;

/** Below this, square mm, nothing can stand within. */
const LEAST_AREA = 1;

const insetsOf = remembered((_: Body) => new Map<Mm, Body | null>());

/**
 * Where within a body a point is at least `depth` mm from its outline, as a convex ring; null where nowhere. Exact for convex
 * outlines of straight sides; of round ones and of others a part of it, never more.
 */
export function insetBody(body: Body, depth: Mm): Body | null {
  const insets = insetsOf(body);
  let inset = insets.get(depth);
  if (inset === undefined) {
    inset = makeInset(body, depth);
    insets.set(depth, inset);
  }
  return inset;
}

function makeInset(body: Body, depth: Mm): Body | null {
  if (body.kind === 'sector') return null;
  if (body.kind === 'disc') return body.radius > depth ? ringBody(chords(body.x, body.y, body.radius - depth)) : null;
  let left: Ring = body.ring;
  body.ring.forEach((b, i) => {
    left = within(left, body.ring.at(i - 1) as XY, b, depth);
  });
  return left.length >= 3 && signedArea(left) > LEAST_AREA ? ringBody(left) : null;
}

function chords(x: Mm, y: Mm, radius: Mm): Ring {
  return Array.from({ length: CHORDS }, (_, k): XY => {
    const angle = (2 * Math.PI * k) / CHORDS;
    return [x + radius * Math.cos(angle), y + radius * Math.sin(angle)];
  });
}

/** What of a ring lies at least `depth` to the right of a line, that is within a ring that runs clockwise on screen (Sutherland and Hodgman 1974). */
function within(ring: Ring, [ax, ay]: XY, [bx, by]: XY, depth: Mm): Ring {
  const length = Math.hypot(bx - ax, by - ay);
  const [nx, ny] = [-(by - ay) / length, (bx - ax) / length];
  const over = ([x, y]: XY) => (x - ax) * nx + (y - ay) * ny - depth;
  return ring.flatMap((q, i) => {
    const p = ring.at(i - 1) as XY;
    const [from, to] = [over(p), over(q)];
    const t = from / (from - to);
    const cut: XY[] = from < 0 !== to < 0 ? [[p[0] + (q[0] - p[0]) * t, p[1] + (q[1] - p[1]) * t]] : [];
    return to >= 0 ? [...cut, q] : cut;
  });
}
