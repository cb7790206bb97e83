import { footprintSize } from '../../geometry/dimension/footprint.ts';
import type { FixtureKind, Level, OpeningKind, Shape } from '../../geometry/plan/model.ts';
import { FIXTURE_DEFAULTS, OBJECT_DEFAULTS, type ObjectPreset, OPENING_DEFAULTS, type UsualSize } from './defaults.ts';

/**
 * A new item takes its size and heights from the last one of its kind on the level: the windows of a basement are alike, and so are its
 * registers. The first one of a kind has the usual size. Nothing is stored beside the plan.
 */

export function fixtureLike(level: Level, kind: FixtureKind): UsualSize {
  return sizedLike(level.fixtures.filter((each) => each.kind === kind).at(-1)) ?? FIXTURE_DEFAULTS[kind];
}

export function objectLike(level: Level, preset: ObjectPreset): UsualSize {
  const { name } = OBJECT_DEFAULTS[preset];
  return sizedLike(level.objects.filter((each) => each.name === name).at(-1)) ?? OBJECT_DEFAULTS[preset];
}

export function openingLike(level: Level, kind: OpeningKind): (typeof OPENING_DEFAULTS)[OpeningKind] {
  return level.openings.filter((each) => each.kind === kind).at(-1) ?? OPENING_DEFAULTS[kind];
}

interface Sized {
  readonly shape: Shape;
  readonly bottom: number;
  readonly top: number;
}

/** Null if there is none, or if its outline is a polygon. */
function sizedLike(last: Sized | undefined): UsualSize | null {
  if (!last) return null;
  const { bottom, top } = last;
  const { across, width, depth } = footprintSize(last.shape);
  if (across !== null) return { footprint: { across }, bottom, top };
  return 'box' in last.shape && width !== null && depth !== null ? { footprint: { width, depth }, bottom, top } : null;
}
