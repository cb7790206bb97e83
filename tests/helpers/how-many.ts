/** Whether the long run was asked for: `STILLSPOT_LONG=1`. */
export const isLongRun = process.env.STILLSPOT_LONG === '1';

/** Random cases of a test: as many as `npm test` has time for, or as many as the long run takes. */
export const howMany = (usual: number, long: number): number => (isLongRun ? long : usual);

/** Returns `count` of the listed cases, evenly spaced from the first one on; all of them in the long run. */
export function someOf<Case>(all: readonly Case[], count: number): readonly Case[] {
  if (isLongRun || count >= all.length) return all;
  return all.filter(
    (_, index) => Math.floor((index * count) / all.length) !== Math.floor(((index - 1) * count) / all.length),
  );
}
