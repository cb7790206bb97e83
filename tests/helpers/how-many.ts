/** Whether this is the long run: `STILLSPOT_LONG=1`. */
export const isLongRun = process.env.STILLSPOT_LONG === '1';

/** Returns the number of random cases of a test: `usual` for `npm test`, `long` for the long run. */
export const howMany = (usual: number, long: number): number => (isLongRun ? long : usual);

/** Returns `count` of the listed cases, evenly spaced, starting with the first; all of them in the long run. */
export function someOf<Case>(all: readonly Case[], count: number): readonly Case[] {
  if (isLongRun || count >= all.length) return all;
  return all.filter(
    (_, index) => Math.floor((index * count) / all.length) !== Math.floor(((index - 1) * count) / all.length),
  );
}
