import { circleReach, footprintReach } from '../../../geometry/dimension/footprint.ts';
import { type NearGap, nearGaps } from '../../../geometry/dimension/wall-gaps.ts';
import type { LevelModel } from '../../../geometry/level/types.ts';
import type { Level } from '../../../geometry/plan/model.ts';
import { shapeMiddle } from '../../../geometry/plane/body.ts';
import type { LengthSubject } from './store.ts';

/** Returns whether two subjects are the same length of the level, even if they are not the same object. */
export function sameSubject(a: LengthSubject | null, b: LengthSubject | null): boolean {
  return a !== null && b !== null && subjectKey(a) === subjectKey(b);
}

export function subjectKey(subject: LengthSubject): string {
  if (subject.of === 'face') return subject.dimension.key;
  return subject.of === 'gap' ? `gap ${subject.id} ${subject.axis}` : `size ${subject.id} ${subject.part}`;
}

/** Returns the middle of a thing or a detector and its reach to each side, mm; null for any other item. */
export function groundOf({ fixtures, objects, detectors }: Level, id: string) {
  const detector = detectors.find((each) => each.id === id);
  if (detector) return { middle: detector.at, reach: circleReach(detector.radius) };
  const thing = [...fixtures, ...objects].find((each) => each.id === id);
  return thing ? { middle: shapeMiddle(thing.shape), reach: footprintReach(thing.shape) } : null;
}

/** Returns the distances of a thing or a detector from the nearer walls; null for any other item. */
export function gapsOf(model: LevelModel, id: string): readonly NearGap[] | null {
  const ground = groundOf(model.level, id);
  return ground && nearGaps(model, ground.middle, ground.reach);
}

export function axisOf({ side }: NearGap): 0 | 1 {
  return side === 'left' || side === 'right' ? 0 : 1;
}
