import { bodyDistance, shapeBody } from '../body.ts';
import type { Detector, Fixture, Level, PlanObject } from '../plan/model.ts';
import { MEETS } from './subjects.ts';

/** A thing whose body a detector's own reaches into. */
export interface Entered {
  readonly thing: Fixture | PlanObject;
  /** Whether the axis stands within the thing's outline, and not only the rim reaches over it. */
  readonly whole: boolean;
}

/**
 * The fixtures and objects that a detector stands in: in plan and over a common height by more than the 0.1 mm by which a
 * limit may be missed. No published list has a row for it, since nobody can set a canister inside a washer; on a plan it is
 * easily done. In the order of the file; what the detector touches, lies upon or hangs over is not among them.
 */
export function thingsEntered(level: Level, { at: [x, y], base, radius, tall }: Detector): readonly Entered[] {
  return [...level.fixtures, ...level.objects].flatMap((thing) => {
    const apart = bodyDistance(shapeBody(thing.shape), x, y);
    const common = Math.min(thing.top, base + tall) - Math.max(thing.bottom, base);
    return apart < radius - MEETS && common > MEETS ? [{ thing, whole: apart === 0 }] : [];
  });
}
