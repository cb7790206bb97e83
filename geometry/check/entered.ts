import type { Detector, Fixture, Level, PlanObject } from '../plan/model.ts';
import { bodyDistance } from '../plane/body.ts';
import { detectorSubject, fixtureSubject, isEntered, objectSubject, type Subject } from './subjects.ts';

/** A thing whose body a detector's own reaches into. */
export interface Entered {
  readonly thing: Fixture | PlanObject | Detector;
  /** Whether the axis stands within the thing's outline, and not only the rim reaches over it. */
  readonly whole: boolean;
}

/**
 * The fixtures, objects and other detectors that a detector stands in: in plan and over a common height by more than the 0.1 mm
 * by which a limit may be missed. A check blocks each of them. In the order of the file; what the detector touches, stands on,
 * lies under or hangs over is not among them.
 */
export function thingsEntered(level: Level, detector: Detector): readonly Entered[] {
  const [x, y] = detector.at;
  const into = (subject: Subject, thing: Entered['thing']): Entered[] =>
    isEntered(subject, detector, x, y) ? [{ thing, whole: bodyDistance(subject.body, x, y) === 0 }] : [];
  return [
    ...level.fixtures.flatMap((fixture) => into(fixtureSubject(fixture), fixture)),
    ...level.objects.flatMap((object) => into(objectSubject(object), object)),
    ...level.detectors.flatMap((other) => (other.id === detector.id ? [] : into(detectorSubject(other), other))),
  ];
}
