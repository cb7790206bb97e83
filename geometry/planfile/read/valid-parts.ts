import { ITEM_KINDS, type Item, type ItemKind, type ItemOf, LIST_OF } from '../../plan/kinds.ts';
import { pointerTo, type Step } from '../problem.ts';
import { isRecord } from '../schema/walk.ts';

/** An item of a file and its path. */
export interface Placed<T> {
  readonly path: readonly Step[];
  readonly item: T;
}

/**
 * Knows which parts of a file match the schema, so that the rest of a file with one wrong number is still checked for
 * meaning, and all problems are reported at once.
 */
export class ValidParts {
  readonly #broken = new Set<string>();
  readonly #above = new Set<string>();

  constructor(broken: readonly (readonly Step[])[]) {
    for (const path of broken) {
      this.#broken.add(pointerTo(path));
      for (let depth = 0; depth < path.length; depth++) this.#above.add(pointerTo(path.slice(0, depth)));
    }
  }

  /** Returns whether the value at a path, everything inside it and everything that contains it are valid. */
  at(path: readonly Step[]): boolean {
    if (this.#broken.size === 0) return true;
    if (this.#above.has(pointerTo(path))) return false;
    return !path.some((_, index) => this.#broken.has(pointerTo(path.slice(0, index + 1))));
  }
}

/** An element with an id on a level, valid or not. Listed in file order: each level, then its items. */
export interface Identified {
  readonly kind: ItemKind | 'level';
  readonly id: string;
  readonly level: number;
  readonly path: readonly Step[];
}

/** Returns every level and item with an id, valid or not, in file order. */
export function identifiedItems(file: unknown): readonly Identified[] {
  return listAt(file, 'levels').flatMap((level, l) => {
    const path = ['levels', l];
    const inside = ITEM_KINDS.flatMap((kind) =>
      listAt(level, LIST_OF[kind]).flatMap((item, i) => identified(kind, item, l, [...path, LIST_OF[kind], i])),
    );
    return [...identified('level', level, l, path), ...inside];
  });
}

function identified(
  kind: Identified['kind'],
  thing: unknown,
  level: number,
  path: readonly Step[],
): readonly Identified[] {
  return isRecord(thing) && typeof thing.id === 'string' ? [{ kind, id: thing.id, level, path }] : [];
}

/** Returns the valid items of one kind on every level. */
export function validItems<K extends ItemKind>(
  file: unknown,
  validParts: ValidParts,
  kind: K,
): readonly Placed<ItemOf[K]>[] {
  const list = LIST_OF[kind];
  return listAt(file, 'levels').flatMap((level, l) =>
    // Valid items have been validated against the schema of their kind.
    validEntries(level, list, ['levels', l, list], validParts).map(({ path, item }) => ({
      path,
      item: item as Item as ItemOf[K],
    })),
  );
}

/** Returns the valid entries of the list at `path`. */
export function validEntries(
  holder: unknown,
  key: string,
  path: readonly Step[],
  validParts: ValidParts,
): readonly Placed<unknown>[] {
  return listAt(holder, key)
    .map((item, index) => ({ path: [...path, index], item }))
    .filter((placed) => validParts.at(placed.path));
}

function listAt(holder: unknown, key: string): readonly unknown[] {
  const list = isRecord(holder) && Object.hasOwn(holder, key) ? holder[key] : null;
  return Array.isArray(list) ? list : [];
}
