import type { Mm } from '../plan/model.ts';
import type { Glass, Sheaf } from './glass.ts';
import type { Heights } from './sun-floor.ts';

/** A sheaf and the depths between which its light is at the height of the detector, mm from the inner face. */
export interface ReachedSheaf extends Sheaf {
  readonly near: Mm;
  readonly far: Mm;
}

/** A height that other openings on the way set to the light. */
export interface Drop {
  readonly drop: Mm;
  readonly bound: 'below' | 'above';
}

/** Sheaves side by side that are traced as one. */
export interface SheafGroup extends ReachedSheaf {
  readonly parts: readonly ReachedSheaf[];
}

/** Columns are one part while their light ends as deep as that of the first within this, mm along a beam. */
const SAME_DEPTH: Mm = 10;
/** The ends of the parts of a group are this near to a straight line, mm along a beam, where the hull of the light would close a dent. */
const DENT: Mm = 15;
/** Depth by direction, mm: a quarter of it is how far the ends of the light bend between the first part and the last. */
const BEND: Mm = 50;

type Open<T> = { -readonly [K in keyof T]: T[K] };

/**
 * Groups the columns of one side of an opening so that the hull of the light of a group is hardly larger than the light. What lies
 * beyond `most`, where the level ends, does not count.
 */
export function sheafGroups(
  glass: Glass,
  columns: readonly Sheaf[],
  heights: Heights,
  drops: readonly Drop[],
  most: Mm,
): readonly SheafGroup[] {
  const ends = (part: ReachedSheaf): readonly Mm[] =>
    [part.far, part.near, ...drops.map(({ drop, bound }) => drop * (bound === 'below' ? part.g1 : part.g0))].map(
      (end) => Math.min(end, most),
    );
  const groups: (Open<SheafGroup> & { parts: ReachedSheaf[] })[] = [];
  let line: StraightEnds | null = null;
  for (const part of joinedColumns(glass, columns, heights, drops, most)) {
    const last = groups[groups.length - 1];
    if (last && line && last.k1 === part.k0 && line.takes(part, ends(part))) {
      Object.assign(last, union(last, part));
      last.parts.push(part);
    } else {
      groups.push({ ...part, parts: [part] });
      line = new StraightEnds(part, ends(part));
    }
  }
  return groups;
}

/** Tells how many parts have their ends nearly on straight lines, from the first to the last: each part narrows the slopes that are left. */
class StraightEnds {
  private readonly first: ReachedSheaf;
  private readonly ends: readonly Mm[];
  private readonly steepest: number[];
  private readonly flattest: number[];

  constructor(first: ReachedSheaf, ends: readonly Mm[]) {
    this.first = first;
    this.ends = ends;
    this.steepest = ends.map(() => Number.POSITIVE_INFINITY);
    this.flattest = ends.map(() => Number.NEGATIVE_INFINITY);
  }

  /** Returns whether a part goes on with the lines; it is one of them from then on. */
  takes(part: ReachedSheaf, ends: readonly Mm[]): boolean {
    const wide = part.k1 - this.first.k0;
    const run = (part.k0 + part.k1 - this.first.k0 - this.first.k1) / 2;
    for (let i = 0; i < ends.length; i++) {
      const rise = (ends[i] as Mm) - (this.ends[i] as Mm);
      if (Math.abs(rise) * wide > BEND) return false;
      if (rise > (this.steepest[i] as number) * run || rise < (this.flattest[i] as number) * run) return false;
    }
    const dent = DENT / beamLength(part);
    for (let i = 0; i < ends.length; i++) {
      const rise = (ends[i] as Mm) - (this.ends[i] as Mm);
      this.steepest[i] = Math.min(this.steepest[i] as number, (rise + dent) / run);
      // The far end may lie above the line: there the hull closes no dent.
      if (i > 0) this.flattest[i] = Math.max(this.flattest[i] as number, (rise - dent) / run);
    }
    return true;
  }
}

/** Returns the way of a beam while it goes on by 1 in depth, at most. */
function beamLength({ k0, k1 }: Sheaf): number {
  return Math.hypot(1, Math.max(Math.abs(k0), Math.abs(k1)));
}

function union(one: ReachedSheaf, two: ReachedSheaf): ReachedSheaf {
  return {
    k0: one.k0,
    k1: two.k1,
    g0: Math.min(one.g0, two.g0),
    g1: Math.max(one.g1, two.g1),
    near: Math.min(one.near, two.near),
    far: Math.max(one.far, two.far),
  };
}

function joinedColumns(
  glass: Glass,
  columns: readonly Sheaf[],
  heights: Heights,
  drops: readonly Drop[],
  most: Mm,
): readonly ReachedSheaf[] {
  const joined: Open<ReachedSheaf>[] = [];
  const reach = reachOf(glass, heights);
  const isLike = (part: ReachedSheaf, one: ReachedSheaf) => {
    const same = SAME_DEPTH / beamLength(part);
    return (
      Math.abs(Math.min(part.far, most) - Math.min(one.far, most)) <= same &&
      Math.abs(Math.min(part.near, most) - Math.min(one.near, most)) <= same &&
      drops.every(
        ({ drop }) => Math.min(drop * Math.max(part.g1, one.g1), most) - drop * Math.min(part.g0, one.g0) <= 2 * same,
      )
    );
  };
  let first: ReachedSheaf | null = null;
  let open: Open<ReachedSheaf> | null = null;
  for (const column of columns) {
    const { near, far } = reach(column);
    if (far <= 0 || near >= most || near > far) continue;
    const part = { ...column, near, far };
    if (open && first && open.k1 === part.k0 && isLike(part, first)) {
      open.k1 = part.k1;
      open.g0 = Math.min(open.g0, part.g0);
      open.g1 = Math.max(open.g1, part.g1);
      open.near = Math.min(open.near, near);
      open.far = Math.max(open.far, far);
    } else {
      first = part;
      open = { ...part };
      joined.push(open);
    }
  }
  return joined;
}

/** Returns how to find the depths between which a sheaf is at the height of the detector. */
function reachOf({ opening: { bottom, top, shade }, thickness }: Glass, { base, tall }: Heights) {
  const overhang = typeof shade === 'object' ? shade?.overhang : undefined;
  const sill = Math.max(0, bottom - base - tall);
  return ({ g0, g1 }: Sheaf): { near: Mm; far: Mm } => {
    const head = (top - base) * g1 - thickness;
    const roof = overhang ? (top + overhang.above - base) * g1 - thickness - overhang.depth : head;
    // Flatter beams than this alone pass between sill and head through the whole wall, and under the overhang.
    const flattest = Math.max(
      thickness / Math.max(1e-9, top - base - sill),
      overhang ? (thickness + overhang.depth) / Math.max(1e-9, top + overhang.above - base - sill) : 0,
    );
    if (g1 < flattest) return { near: 1, far: 0 };
    return { near: sill * Math.max(g0, flattest), far: Math.min(head, roof) };
  };
}
