import { ITEM_KINDS, type Item, type ItemKind, type ItemOf, LIST_OF } from '../../plan/kinds.ts';
import { pointerTo, type Step } from '../pointer.ts';
import { isRecord } from '../schema/walk.ts';

/** A thing of a file and the place where it stands. */
export interface Placed<T> {
  readonly path: readonly Step[];
  readonly item: T;
}

/**
 * Tells which parts of a file have the right shape, so that a file with one wrong number still gets the rest of its
 * meaning looked at: all problems come at once.
 */
export class Soundness {
  readonly #broken = new Set<string>();
  readonly #above = new Set<string>();

  constructor(broken: readonly (readonly Step[])[]) {
    for (const path of broken) {
      this.#broken.add(pointerTo(path));
      for (let depth = 0; depth < path.length; depth++) this.#above.add(pointerTo(path.slice(0, depth)));
    }
  }

  /** Whether neither the place nor anything inside it is broken, nor anything that it is part of. */
  at(path: readonly Step[]): boolean {
    if (this.#above.has(pointerTo(path))) return false;
    return !path.some((_, index) => this.#broken.has(pointerTo(path.slice(0, index + 1))));
  }
}

/** Everything with an id, sound or not, that the file has on its levels, in file order: the level first, then its things. */
export interface Named {
  readonly kind: ItemKind | 'level';
  readonly id: string;
  readonly level: number;
  readonly path: readonly Step[];
}

export function namedThings(file: unknown): readonly Named[] {
  return listAt(file, 'levels').flatMap((level, l) => {
    const path = ['levels', l];
    const inside = ITEM_KINDS.flatMap((kind) =>
      listAt(level, LIST_OF[kind]).flatMap((item, i) => named(kind, item, l, [...path, LIST_OF[kind], i])),
    );
    return [...named('level', level, l, path), ...inside];
  });
}

function named(kind: Named['kind'], thing: unknown, level: number, path: readonly Step[]): readonly Named[] {
  return isRecord(thing) && typeof thing.id === 'string' ? [{ kind, id: thing.id, level, path }] : [];
}

/** The sound things of one kind on every level. */
export function soundItems<K extends ItemKind>(
  file: unknown,
  soundness: Soundness,
  kind: K,
): readonly Placed<ItemOf[K]>[] {
  const list = LIST_OF[kind];
  return listAt(file, 'levels').flatMap((level, l) =>
    // What is sound has been validated against the schema of its kind.
    soundEntries(level, list, ['levels', l, list], soundness).map(({ path, item }) => ({
      path,
      item: item as Item as ItemOf[K],
    })),
  );
}

/** The sound entries of a list that stands at `path`. */
export function soundEntries(
  holder: unknown,
  key: string,
  path: readonly Step[],
  soundness: Soundness,
): readonly Placed<unknown>[] {
  return listAt(holder, key)
    .map((item, index) => ({ path: [...path, index], item }))
    .filter((placed) => soundness.at(placed.path));
}

function listAt(holder: unknown, key: string): readonly unknown[] {
  const list = isRecord(holder) && Object.hasOwn(holder, key) ? holder[key] : null;
  return Array.isArray(list) ? list : [];
}
