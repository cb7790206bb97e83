/** What becomes of a plan of a shelf file, beside what stands on this shelf. Nothing is overwritten in silence. */

/** A plan by the names of its texts. */
export interface Known {
  readonly id: string;
  readonly hash: string;
  /** Of its earlier versions. */
  readonly earlier: ReadonlySet<string>;
  readonly binned: boolean;
}

export type Fate =
  /** It is not here: it comes as it is. */
  | { readonly fate: 'new' }
  /** The same plan is here, `id`, or a later state of it: only versions that are missing come. */
  | { readonly fate: 'same'; readonly id: string }
  /** The same plan is here, in the bin: it is taken out. */
  | { readonly fate: 'from-bin'; readonly id: string }
  /** An earlier state of it is here: it goes on from there, and that state is kept among its versions. */
  | { readonly fate: 'newer'; readonly id: string }
  /** Both have gone different ways: it is put beside the one that is here. */
  | { readonly fate: 'beside'; readonly id: string };

/** Decides by what the plans hold, never by their dates: clocks of two devices differ. */
export function fateOf(incoming: Known, here: readonly Known[]): Fate {
  const twin = here.find(({ id }) => id === incoming.id);
  const same = twin?.hash === incoming.hash ? twin : here.find(({ hash }) => hash === incoming.hash);
  if (same) return { fate: same.binned && !incoming.binned ? 'from-bin' : 'same', id: same.id };
  if (!twin) return { fate: 'new' };
  if (twin.earlier.has(incoming.hash)) return { fate: 'same', id: twin.id };
  return { fate: incoming.earlier.has(twin.hash) ? 'newer' : 'beside', id: twin.id };
}
