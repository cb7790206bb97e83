import { type Body, ringBody } from '../plane/body.ts';
import { memoize } from '../plane/memoize.ts';
import type { Mm, XY } from '../plane/types.ts';

/**
 * The free part inside a zone: where a detector stands with its whole footprint on the top of the item that supports
 * it, and the item does not obstruct it. There the axis is `depth` mm or more inside the outline of `body`.
 */
export interface Hole {
  readonly body: Body;
  readonly depth: Mm;
}

/**
 * Number of chords of a round table: at radius 1 m they deviate by up to 0.01 mm to the inside, which is the safe side.
 */
const CHORDS = 720;

const holesByDepth = memoize((_: Body) => new Map<Mm, Hole | null>());

/** Returns the hole of a body at a depth, memoized; null when the footprint does not fit. */
export function holeIn(body: Body, depth: Mm): Hole | null {
  const holes = holesByDepth(body);
  let hole = holes.get(depth);
  if (hole === undefined) {
    hole = buildHole(body, depth);
    holes.set(depth, hole);
  }
  return hole;
}

function buildHole(body: Body, depth: Mm): Hole | null {
  if (body.kind === 'sector') return null;
  if (body.kind === 'ring') return { body, depth };
  const radius = body.radius - depth;
  return radius > 0 ? { body: ringBody(chords(body.x, body.y, radius)), depth: 0 } : null;
}

function chords(x: Mm, y: Mm, radius: Mm): XY[] {
  return Array.from({ length: CHORDS }, (_, k): XY => {
    const angle = (2 * Math.PI * k) / CHORDS;
    return [x + radius * Math.cos(angle), y + radius * Math.sin(angle)];
  });
}
