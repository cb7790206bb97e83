/**
 * Where a taped length ends at the two walls at its ends: at their faces toward the room (inside), at their faces away
 * from it (outside), or at their center-lines.
 */
export const TAPED_BY = ['inside', 'outside', 'center'] as const;
export type TapedBy = (typeof TAPED_BY)[number];

/** Returns whether a value is one of `TAPED_BY`. */
export function isTapedBy(value: unknown): value is TapedBy {
  return TAPED_BY.some((each) => each === value);
}

/**
 * How many half thicknesses of the wall at an end the taped length reaches beyond that wall's center-line; negative
 * where it stops short of it.
 */
export const HALVES_BEYOND: Readonly<Record<TapedBy, -1 | 0 | 1>> = { inside: -1, center: 0, outside: 1 };
