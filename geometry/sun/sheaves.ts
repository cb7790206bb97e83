import type { Mm } from '../plan/model.ts';
import { vectorLength } from '../plane/point.ts';
import type { Sheaf } from './glass.ts';
import type { Reach, ReachedSheaf } from './reach.ts';

/** A height limit that another opening sets for the light. */
export interface Drop {
  readonly drop: Mm;
  readonly bound: 'below' | 'above';
}

/** Adjacent sheaves that are traced as one. */
export interface SheafGroup extends ReachedSheaf {
  readonly parts: readonly ReachedSheaf[];
}

/** Columns are joined while their light ends within this distance of that of the first, mm along a beam. */
const SAME_WAY: Mm = 10;
/** Greatest width of joined columns, as difference of directions in radians: a chord is 1 mm from its arc of 6 m. */
const WIDEST = 0.035;
/** The ends of the parts of a group are this close to a straight line, mm along a beam, where the hull of the light would fill a dent. */
const DENT: Mm = 15;
/** Limit of change in depth times width in directions, mm: the ends of the light bend by at most a quarter of it within a group. */
const BEND: Mm = 50;

type Open<T> = { -readonly [K in keyof T]: T[K] };

/**
 * Groups the columns of one side of an opening so that the hull of the light of a group is hardly larger than the light. Light beyond
 * `most`, where the level ends, does not count.
 */
export function sheafGroups(
  reach: Reach,
  columns: readonly Sheaf[],
  drops: readonly Drop[],
  most: Mm,
): readonly SheafGroup[] {
  const ends = (part: ReachedSheaf): readonly Mm[] => {
    const found = [Math.min(part.far, most), Math.min(part.near, most)];
    const cosine = 1 / beamLength(part);
    for (const { drop, bound } of drops)
      found.push(Math.min(drop * cosine * (bound === 'below' ? part.l1 : part.l0), most));
    return found;
  };
  const groups: (Open<SheafGroup> & { parts: ReachedSheaf[] })[] = [];
  let line: StraightEnds | null = null;
  for (const part of joinedColumns(reach, columns, drops, most)) {
    const last = groups[groups.length - 1];
    const own = ends(part);
    if (last && line && last.k1 === part.k0 && line.takes(part, own)) {
      widen(last, part);
      last.parts.push(part);
    } else {
      groups.push({ ...part, parts: [part] });
      line = new StraightEnds(part, own);
    }
  }
  return groups;
}

/** Tests whether the ends of consecutive parts are nearly on straight lines from the first part: each part narrows the possible slopes. */
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

  /** Returns whether a part continues the lines; if so, it becomes part of them. */
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
      // The far end may be above the line: the hull fills no dent there.
      if (i > 0) this.flattest[i] = Math.max(this.flattest[i] as number, (rise - dent) / run);
    }
    return true;
  }
}

/** Returns the greatest distance that a beam covers per 1 of depth. */
function beamLength({ k0, k1 }: Pick<Sheaf, 'k0' | 'k1'>): number {
  return vectorLength(1, Math.max(Math.abs(k0), Math.abs(k1)));
}

/** Enlarges a group to include the part after it. */
function widen(group: Open<ReachedSheaf>, part: ReachedSheaf): void {
  group.k1 = part.k1;
  group.l0 = Math.min(group.l0, part.l0);
  group.l1 = Math.max(group.l1, part.l1);
  group.near = Math.min(group.near, part.near);
  group.far = Math.max(group.far, part.far);
  group.bulge = Math.max(group.bulge, part.bulge);
}

function joinedColumns(
  reach: Reach,
  columns: readonly Sheaf[],
  drops: readonly Drop[],
  most: Mm,
): readonly ReachedSheaf[] {
  const joined: ReachedSheaf[] = [];
  const isLike = (first: Sheaf, open: Sheaf, part: Sheaf) => {
    if ((part.k1 - open.k0) / (1 + open.k0 * part.k1) > WIDEST) return false;
    const [l0, l1] = [Math.min(open.l0, part.l0), Math.max(open.l1, part.l1)];
    const beyond = most * beamLength({ k0: open.k0, k1: part.k1 });
    return (
      (reach.head * Math.abs(first.l1 - part.l1) <= SAME_WAY || reach.head * l0 >= beyond) &&
      (reach.sill * Math.abs(first.l0 - part.l0) <= SAME_WAY || reach.sill * l0 >= beyond) &&
      drops.every(({ drop }) => drop * (l1 - l0) <= 2 * SAME_WAY || drop * l0 >= beyond)
    );
  };
  let first: Sheaf | null = null;
  let open: Open<Sheaf> | null = null;
  const close = () => {
    const part = open && reach.of(open);
    if (part && part.far > 0 && part.near < most && part.near <= part.far) joined.push(part);
  };
  for (const column of columns) {
    if (open && first && open.k1 === column.k0 && isLike(first, open, column)) {
      open.k1 = column.k1;
      open.l0 = Math.min(open.l0, column.l0);
      open.l1 = Math.max(open.l1, column.l1);
    } else {
      close();
      first = column;
      open = { ...column };
    }
  }
  close();
  return joined;
}
