import { circleReach, footprintReach } from '../../../geometry/dimension/footprint.ts';
import { type NearGap, nearGaps } from '../../../geometry/dimension/wall-gaps.ts';
import type { LevelModel } from '../../../geometry/level/types.ts';
import type { Level } from '../../../geometry/plan/model.ts';
import { shapeMiddle } from '../../../geometry/plane/body.ts';
import type { LengthSubject } from './store.ts';

/** The same length of the level, whether or not it is the same object. */
export function sameSubject(a: LengthSubject | null, b: LengthSubject | null): boolean {
  return a !== null && b !== null && subjectKey(a) === subjectKey(b);
}

export function subjectKey(subject: LengthSubject): string {
  if (subject.of === 'face') return subject.dimension.key;
  return subject.of === 'gap' ? `gap ${subject.id} ${subject.axis}` : `size ${subject.id} ${subject.part}`;
}

/** The ground that a thing or a detector takes up, as it is taped; null for what has no place of its own. */
export function groundOf({ fixtures, objects, detectors }: Level, id: string) {
  const detector = detectors.find((each) => each.id === id);
  if (detector) return { middle: detector.at, reach: circleReach(detector.radius) };
  const thing = [...fixtures, ...objects].find((each) => each.id === id);
  return thing ? { middle: shapeMiddle(thing.shape), reach: footprintReach(thing.shape) } : null;
}

/** How far a thing or a detector stands from the nearer walls; null for what has no place of its own. */
export function gapsOf(model: LevelModel, id: string): readonly NearGap[] | null {
  const ground = groundOf(model.level, id);
  return ground && nearGaps(model, ground.middle, ground.reach);
}

export function axisOf({ side }: NearGap): 0 | 1 {
  return side === 'left' || side === 'right' ? 0 : 1;
}
