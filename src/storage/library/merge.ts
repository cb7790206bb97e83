/** Merge of a plan from a library file into this library. Nothing is overwritten silently. */

/** A plan, identified by the hashes of its texts. */
export interface Known {
  readonly id: string;
  readonly hash: string;
  /** Hashes of its earlier versions. */
  readonly earlier: ReadonlySet<string>;
  readonly binned: boolean;
}

export type Fate =
  /** It is not in this library: it is added. */
  | { readonly fate: 'new' }
  /** This library has the same plan, `id`, or a later state of it: only missing versions are added. */
  | { readonly fate: 'same'; readonly id: string }
  /** This library has the same plan, deleted: it is restored. */
  | { readonly fate: 'from-bin'; readonly id: string }
  /** This library has an earlier state of it: it is replaced, and the earlier state becomes a version. */
  | { readonly fate: 'newer'; readonly id: string }
  /** Both have changed since they were the same: it is added beside the one in this library. */
  | { readonly fate: 'beside'; readonly id: string };

/** Returns what to do with an incoming plan. Compares content, never dates: the clocks of two devices differ. */
export function fateOf(incoming: Known, here: readonly Known[]): Fate {
  const twin = here.find(({ id }) => id === incoming.id);
  const same = twin?.hash === incoming.hash ? twin : here.find(({ hash }) => hash === incoming.hash);
  if (same) return { fate: same.binned && !incoming.binned ? 'from-bin' : 'same', id: same.id };
  if (!twin) return { fate: 'new' };
  if (twin.earlier.has(incoming.hash)) return { fate: 'same', id: twin.id };
  return { fate: incoming.earlier.has(twin.hash) ? 'newer' : 'beside', id: twin.id };
}
