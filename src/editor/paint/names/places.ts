import type { XY } from '../../../../geometry/plan/model.ts';
import type { SizePx } from '../../../state/viewport.ts';

/** An upright rectangle, px. */
interface RectPx {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

/** Keeps the texts of one drawing from running over one another: who asks first stands. */
export interface Places {
  /** Takes the rectangle about `middle` if nothing stands there yet; `overThings`: also on the ground of a thing. */
  claim(middle: XY, width: number, height: number, overThings?: boolean): boolean;
  /** Takes it whatever stands there: for what must be shown. */
  keep(middle: XY, width: number, height: number): void;
  /** Keeps names off the ground of a thing. */
  avoid(middle: XY, width: number, height: number): void;
  /** Whether nothing stands there; `overThings`: nothing written. */
  isFree(middle: XY, width: number, height: number, overThings?: boolean): boolean;
  /** So much of what is taken, px², the rectangle would hide; what is written on the drawing below counts by an eighth. */
  covered(middle: XY, width: number, height: number): number;
}

/** A drawing that lies below with its names, and where its origin is on this one, px. */
interface Below {
  readonly places: Places;
  readonly origin: XY;
}

/**
 * @param stage nothing is placed beyond it; without one everywhere
 * @param below names that stand already; what may stand over things may stand over them
 */
export function createPlaces(stage: SizePx | null = null, below: Below | null = null): Places {
  const taken: RectPx[] = [];
  const avoided: RectPx[] = [];
  const rect = ([x, y]: XY, width: number, height: number): RectPx => ({
    x: x - width / 2,
    y: y - height / 2,
    width,
    height,
  });
  const clear = (wanted: RectPx, others: readonly RectPx[]) => !others.some((other) => overlap(wanted, other));
  const freeBelow = ([x, y]: XY, width: number, height: number) =>
    !below || below.places.isFree([x - below.origin[0], y - below.origin[1]], width, height, true);
  return {
    claim: (middle, width, height, overThings = false) => {
      const wanted = rect(middle, width, height);
      if (!clear(wanted, taken) || (stage && !within(stage, wanted))) return false;
      if (!overThings && !(clear(wanted, avoided) && freeBelow(middle, width, height))) return false;
      taken.push(wanted);
      return true;
    },
    avoid: (middle, width, height) => {
      avoided.push(rect(middle, width, height));
    },
    keep: (middle, width, height) => {
      taken.push(rect(middle, width, height));
    },
    covered: (middle, width, height) => {
      const wanted = rect(middle, width, height);
      const own = taken.reduce((sum, other) => sum + shared(wanted, other), 0);
      const [x, y] = middle;
      const lower = below?.places.covered([x - below.origin[0], y - below.origin[1]], width, height) ?? 0;
      return own + lower / 8;
    },
    isFree: (middle, width, height, overThings = false) => {
      const wanted = rect(middle, width, height);
      return clear(wanted, taken) && (overThings || clear(wanted, avoided));
    },
  };
}

function within(stage: SizePx, { x, y, width, height }: RectPx): boolean {
  return x >= 0 && y >= 0 && x + width <= stage.width && y + height <= stage.height;
}

function overlap(a: RectPx, b: RectPx): boolean {
  return a.x < b.x + b.width && b.x < a.x + a.width && a.y < b.y + b.height && b.y < a.y + a.height;
}

/** What two rectangles have in common, px². */
function shared(a: RectPx, b: RectPx): number {
  const across = Math.min(a.x + a.width, b.x + b.width) - Math.max(a.x, b.x);
  const down = Math.min(a.y + a.height, b.y + b.height) - Math.max(a.y, b.y);
  return across > 0 && down > 0 ? across * down : 0;
}
