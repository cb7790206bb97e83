import type { Detector, Fixture, Level, PlanObject } from '../plan/model.ts';
import { bodyDistance } from '../plane/body.ts';
import { collides, detectorSubject, fixtureSubject, objectSubject, type Subject } from './subjects.ts';

/** An item that a detector intersects. */
export interface Collision {
  readonly thing: Fixture | PlanObject | Detector;
  /** Whether the axis is inside the item's outline, not only part of the rim. */
  readonly whole: boolean;
}

/**
 * Returns the fixtures, objects and other detectors that a detector intersects: in plan and in height, by more than
 * the limit tolerance (0.1 mm). A check blocks each of them. In file order; items that the detector touches, stands
 * on, is under or hangs above are not included.
 */
export function collisionsOf(level: Level, detector: Detector): readonly Collision[] {
  const [x, y] = detector.at;
  const collisionWith = (subject: Subject, thing: Collision['thing']): Collision[] =>
    collides(subject, detector, x, y) ? [{ thing, whole: bodyDistance(subject.body, x, y) === 0 }] : [];
  return [
    ...level.fixtures.flatMap((fixture) => collisionWith(fixtureSubject(fixture), fixture)),
    ...level.objects.flatMap((object) => collisionWith(objectSubject(object), object)),
    ...level.detectors.flatMap((other) =>
      other.id === detector.id ? [] : collisionWith(detectorSubject(other), other),
    ),
  ];
}
