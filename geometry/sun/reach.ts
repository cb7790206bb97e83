import type { Mm } from '../plan/model.ts';
import type { Glass, Sheaf } from './glass.ts';
import type { Heights } from './sun-floor.ts';

/** A sheaf and the depths between which its light is at the height of the detector, mm from the inner face, in any of its directions. */
export interface ReachedSheaf extends Sheaf {
  readonly near: Mm;
  readonly far: Mm;
  /** How far the ends of the light may extend beyond the chord between its first and last direction, mm along a beam. */
  readonly bulge: Mm;
}

/** If the bulge would be greater than this, more directions are used, mm. */
const MOST_BULGE: Mm = 1;

/** Rounding of a ratio. */
const ROUNDING = 1e-9;

/** Computes where light through a glass is at the height of the detector. */
export class Reach {
  /** How far the detector is below the head, and below the sill, mm. */
  readonly head: Mm;
  readonly sill: Mm;
  private readonly tall: Mm;
  private readonly thickness: Mm;
  /** The edge of an overhang: its height above the detector, and its distance from the inner face, mm. */
  private readonly roof: { readonly above: Mm; readonly out: Mm } | null;
  /** Beams that fall by 1 in less than this along y do not pass between sill and head through the whole wall and under the overhang. */
  private readonly flattest: number;

  constructor({ opening: { bottom, top, shade }, thickness }: Glass, { base, tall }: Heights) {
    const overhang = typeof shade === 'object' ? shade?.overhang : undefined;
    this.tall = tall;
    this.thickness = thickness;
    this.head = top - base;
    this.sill = Math.max(0, bottom - base - tall);
    this.roof = overhang ? { above: top + overhang.above - base, out: thickness + overhang.depth } : null;
    // A beam at the height of the detector in the room is above that height at the inner face, and above the sill.
    const lowest = Math.max(base, bottom) - base;
    this.flattest = Math.max(
      thickness / Math.max(1e-9, this.head - lowest),
      this.roof ? this.roof.out / Math.max(1e-9, this.roof.above - lowest) : 0,
    );
  }

  /** Returns a sheaf with the depths between which any of its light is at the height of the detector. */
  of(sheaf: Sheaf): ReachedSheaf {
    const { k0, k1, l0, l1 } = sheaf;
    const straightest = k0 > 0 ? k0 : Math.min(k1, 0);
    const bulge = Math.min(MOST_BULGE, this.bulgeOf(k0, k1));
    const part = { k0, k1, l0, l1, bulge, near: 0, far: 0 };
    part.near = this.nearAt(part, -k0 > k1 ? k0 : k1);
    part.far = this.farAt(part, straightest);
    return part;
  }

  /**
   * Returns the least fall along y of light that passes under this head and the overhang and, at a depth, over a height above the top of the
   * detector.
   */
  leastFall(over: Mm, depth: Mm): number {
    const under = (above: Mm, out: Mm) => {
      const most = above - over - this.tall;
      return most > 0 ? (depth + out) / most : Number.POSITIVE_INFINITY;
    };
    const head = under(this.head, this.thickness);
    return this.roof ? Math.max(head, under(this.roof.above, this.roof.out)) : head;
  }

  /** Returns the greatest fall along y of light that passes over this sill and, at a depth, under a height above the detector. */
  mostFall(under: Mm, depth: Mm): number {
    const least = this.sill === 0 ? 0 : this.sill + this.tall - under;
    return least > 0 ? depth / least : Number.POSITIVE_INFINITY;
  }

  /** Returns the least depth of the light in one direction; nothing is lit if it is more than `farAt`. */
  nearAt({ l0, bulge }: Bulging, k: number): Mm {
    if (this.sill === 0) return 0;
    const cosine = 1 / Math.sqrt(1 + k * k);
    return this.sill * Math.max(l0 * cosine, this.flattest) - bulge * cosine;
  }

  farAt(sheaf: Bulging, k: number): Mm {
    const cosine = 1 / Math.sqrt(1 + k * k);
    const fall = wayOf(sheaf) * cosine;
    if (fall < this.flattest * (1 - ROUNDING)) return -1;
    const head = this.head * fall - this.thickness;
    const far = this.roof ? Math.min(head, this.roof.above * fall - this.roof.out) : head;
    return far + sheaf.bulge * cosine;
  }

  /**
   * Returns directions from ka to kb, including both, such that between two consecutive ones the ends of the light, cut at
   * the given depths, are straight or bend by no more than the bulge. An arc is on the inner side of its chord, because it is replaced by a
   * polygon around it.
   */
  directionsOf(sheaf: ReachedSheaf, ka: number, kb: number, low: Mm, high: Mm): readonly number[] {
    const found = [ka, kb];
    const add = (cosine: number) => {
      if (!(cosine > 0 && cosine <= 1)) return;
      const k = Math.sqrt(1 / (cosine * cosine) - 1);
      if (-k > ka && -k < kb) found.push(-k);
      if (k > ka && k < kb) found.push(k);
    };
    if (ka < 0 && kb > 0) add(1);
    const way = wayOf(sheaf);
    const { head, sill, thickness, roof, flattest } = this;
    if (roof) add((thickness - roof.out) / ((head - roof.above) * way));
    for (const depth of [low, high]) {
      if (sheaf.far > depth) add((depth + thickness) / (head * way + sheaf.bulge));
      if (sheaf.far > depth && roof) add((depth + roof.out) / (roof.above * way + sheaf.bulge));
      if (sill > 0) add(depth / (sill * sheaf.l0 - sheaf.bulge));
    }
    if (flattest > 0) {
      if (sill > 0) add(flattest / sheaf.l0);
      add(flattest / sheaf.l1);
    }
    if (sheaf.bulge < MOST_BULGE) return found;
    found.sort((one, other) => one - other);
    return found.flatMap((k, i) => (i === 0 ? [k] : this.bentLess(found[i - 1] as number, k)));
  }

  /** Returns directions after ka, up to kb, so close together that the light does not bulge by more than the limit. */
  private bentLess(ka: number, kb: number): readonly number[] {
    if (this.bulgeOf(ka, kb) <= MOST_BULGE) return [kb];
    const middle = Math.tan((Math.atan(ka) + Math.atan(kb)) / 2);
    return [...this.bentLess(ka, middle), ...this.bentLess(middle, kb)];
  }

  /** Returns the bulge between two directions. The way of a beam within the wall and under the overhang is a secant, which is not linear in k. */
  private bulgeOf(ka: number, kb: number): Mm {
    const long = this.roof?.out ?? this.thickness;
    const [most, wide] = [Math.max(ka * ka, kb * kb), kb - ka];
    const least = 1 + Math.min(ka * ka, kb * kb);
    // For a narrow range by the second derivative of the secant, which is at most 1 + 2k² times that along k.
    if (wide * wide < 0.04 * least) return (long * (1 + 2 * most) * wide * wide) / (8 * least * Math.sqrt(least));
    const half = (Math.atan(ka) + Math.atan(kb)) / 2;
    return long * Math.max(0, (Math.hypot(1, ka) + Math.hypot(1, kb)) / 2 - 1 / Math.cos(half));
  }
}

type Bulging = Sheaf & Pick<ReachedSheaf, 'bulge'>;

/** Returns the distance in which the flattest beams of a sheaf fall by 1, lengthened so that the chord of its arc is outside the arc. */
function wayOf({ k0, k1, l1 }: Sheaf): number {
  // The tangent of the angle between k0 and k1. The secant of half the angle is at most 1 + tan²/8.
  const tangent = (k1 - k0) / (1 + k0 * k1);
  return l1 * (1 + (tangent * tangent) / 8);
}
