/** Counts how often direct sun was worked out since the start: what is cached with verdicts in it is made again for a new number. */
let version = 0;

export const sunVersion = (): number => version;

export function nextSunVersion(): void {
  version += 1;
}
