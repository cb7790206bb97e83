/** Number of times that direct sun was computed since the start. Caches that contain verdicts are rebuilt when it changes. */
let version = 0;

export const sunVersion = (): number => version;

export function nextSunVersion(): void {
  version += 1;
}
