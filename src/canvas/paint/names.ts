import type { XY } from '../../../geometry/plan/model.ts';

/** An upright rectangle on screen, px. */
interface RectPx {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

/** Keeps the texts of one drawing from running over one another: who asks first stands. */
export interface Places {
  /** Takes the rectangle about `middle` if nothing stands there yet. */
  claim(middle: XY, width: number, height: number): boolean;
  /** Takes it whatever stands there: for what must be shown. */
  keep(middle: XY, width: number, height: number): void;
  /** Keeps other names of this drawing off the ground of a thing; names on layers above may stand on it. */
  avoid(middle: XY, width: number, height: number): void;
  readonly taken: readonly RectPx[];
}

/** The places of the names that the layer below drew last: what stands on a layer above keeps off them. */
export const drawnNames: { current: Places | null } = { current: null };

/** @param from a drawing below whose texts stand already */
export function createPlaces(from: Places | null = null): Places {
  const taken: RectPx[] = [...(from?.taken ?? [])];
  const avoided: RectPx[] = [];
  const rect = ([x, y]: XY, width: number, height: number): RectPx => ({
    x: x - width / 2,
    y: y - height / 2,
    width,
    height,
  });
  return {
    taken,
    claim: (middle, width, height) => {
      const wanted = rect(middle, width, height);
      if ([...taken, ...avoided].some((other) => overlap(wanted, other))) return false;
      taken.push(wanted);
      return true;
    },
    avoid: (middle, width, height) => {
      avoided.push(rect(middle, width, height));
    },
    keep: (middle, width, height) => {
      taken.push(rect(middle, width, height));
    },
  };
}

/** The first of several middles where the text finds room; null for none. */
export function firstFree(places: Places, middles: readonly XY[], width: number, height: number): XY | null {
  return middles.find((middle) => places.claim(middle, width, height)) ?? null;
}

function overlap(a: RectPx, b: RectPx): boolean {
  return a.x < b.x + b.width && b.x < a.x + a.width && a.y < b.y + b.height && b.y < a.y + a.height;
}
