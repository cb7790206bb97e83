import type { Plan } from '../../../geometry/plan/model.ts';

/** Returns the names of the people who placed and picked up detectors, each once. */
export function peopleInLog({ log = [] }: Plan): readonly string[] {
  const names = log.flatMap(({ placedBy, fetchedBy }) => [placedBy.trim(), fetchedBy.trim()]);
  return [...new Set(names.filter(Boolean))];
}

/** Returns the license number of a person; empty if it is not known. */
export function licenseOf({ report }: Plan, name: string): string {
  return report?.licenses?.find((each) => each.name.trim() === name)?.license.trim() ?? '';
}
