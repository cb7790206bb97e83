import type { Level, Plan } from '../../geometry/plan/model.ts';

/** Returns the level that is shown first: the first with a detector, else the first that is or could be lived in, else the first. */
export function firstToShow({ levels }: Plan): Level | undefined {
  return (
    levels.find(({ detectors }) => detectors.length > 0) ?? levels.find(({ living }) => living !== 'no') ?? levels[0]
  );
}
