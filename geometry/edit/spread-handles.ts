import type { Mm, XY } from '../plan/model.ts';
import type { Handle } from './reshape.ts';

/** A handle with the point where it is shown: its own point, or one beside it where other handles are too near. */
export type ShownHandle = Handle & { readonly shownAt: XY };

/** Radians: no two multiples of it have the same direction. */
const GOLDEN_ANGLE = 2.39996;
/** Far more rounds than the handles of any drawn item need. */
const MOST_ROUNDS = 400;
/** Pairs are pushed apart by this factor more than required, so that rounding leaves none too near. */
const SLACK = 1.001;

/**
 * Returns the handles of one item with places to show them that are at least `gap` apart. A handle with enough room stays at its point;
 * others are moved apart along the line between them.
 *
 * @param gap least distance of two handles, mm
 */
export function spreadHandles(handles: readonly Handle[], gap: Mm): readonly ShownHandle[] {
  const places = handles.map(({ at: [x, y] }): [Mm, Mm] => [x, y]);
  for (let round = 0; round < MOST_ROUNDS; round++) if (!pushApart(places, gap)) break;
  return handles.map((handle, index) => ({ ...handle, shownAt: places[index] ?? handle.at }));
}

/** Pushes apart each pair that is too near. Returns whether there was such a pair. */
function pushApart(places: readonly [Mm, Mm][], gap: Mm): boolean {
  let pushed = false;
  for (const [index, a] of places.entries()) {
    for (const b of places.slice(index + 1)) {
      const [dx, dy] = [b[0] - a[0], b[1] - a[1]];
      const far = Math.hypot(dx, dy);
      if (far >= gap) continue;
      pushed = true;
      // Handles at one point are moved in different directions: on one line they would need all of its length.
      const turn = far < gap / 1000 ? index * GOLDEN_ANGLE : Math.atan2(dy, dx);
      const [ux, uy] = [Math.cos(turn), Math.sin(turn)];
      const by = (gap * SLACK - far) / 2;
      a[0] -= ux * by;
      a[1] -= uy * by;
      b[0] += ux * by;
      b[1] += uy * by;
    }
  }
  return pushed;
}
