import { type Body, ringBody } from '../plane/body.ts';
import { memoize } from '../plane/memoize.ts';
import type { Mm, XY } from '../plane/types.ts';

/**
 * What of a zone is free again: where a foot stands wholly on the top that carries it, and the thing is not in its way. The axis is
 * `depth` mm or more inside the outline of `body`.
 */
export interface Hole {
  readonly body: Body;
  readonly depth: Mm;
}

/** Chords of a round table: at a radius of 1 m they lie up to 0.01 mm inside the circle, on the safe side. */
const CHORDS = 720;

const holesOf = memoize((_: Body) => new Map<Mm, Hole | null>());

/** The hole of a body at a depth; the same body and depth give the same hole. Null where the foot fits nowhere on it. */
export function holeIn(body: Body, depth: Mm): Hole | null {
  const holes = holesOf(body);
  let hole = holes.get(depth);
  if (hole === undefined) {
    hole = makeHole(body, depth);
    holes.set(depth, hole);
  }
  return hole;
}

function makeHole(body: Body, depth: Mm): Hole | null {
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
