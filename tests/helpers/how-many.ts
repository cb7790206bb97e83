/** Random cases of a test: as many as `npm test` has time for, or as many as the long run takes (`STILLSPOT_LONG=1 npm test -- unit`). */
export const howMany = (usual: number, long: number): number => (process.env.STILLSPOT_LONG === '1' ? long : usual);
