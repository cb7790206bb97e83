import type { Level, Plan } from '../../geometry/plan/model.ts';

/** Returns the level that is shown first: the first level with a detector, else the first that somebody lives in or could, else the first. */
export function firstToShow({ levels }: Plan): Level | undefined {
  return (
    levels.find(({ detectors }) => detectors.length > 0) ?? levels.find(({ living }) => living !== 'no') ?? levels[0]
  );
}
