import type { Plan } from '../../plan/model.ts';
import type { Practice } from '../../plan/test-record.ts';
import { instantTrouble } from '../instant.ts';
import type { Step } from '../pointer.ts';
import { quoted } from '../problem.ts';
import type { Flaw } from './flaw.ts';
import { instantFlaws } from './section.ts';

/** A flaw and the thing that it belongs to, as a path from the top of the file. */
export interface PlacedFlaw {
  readonly at: readonly Step[];
  readonly flaw: Flaw;
}

/** The records of a job: keys of the file that may be missing. */
export const JOB_SECTIONS = ['practice', 'log', 'weather', 'agreement', 'earlier', 'quality'] as const;
export type JobSection = Pick<Plan, (typeof JOB_SECTIONS)[number]>;

/**
 * What the schema cannot say of the records of a job: days and instants that the calendar does not have, hours that end before
 * they begin, entries of a detector that is not in the plan, two blanks or spikes of one id.
 */
export function jobFlaws(job: JobSection, detectors: ReadonlySet<string>): readonly PlacedFlaw[] {
  const { practice, log = [], weather = [], agreement, earlier = [], quality = [] } = job;
  const instants = (list: string, items: readonly { readonly at: string | null }[]) =>
    items.flatMap(({ at }, index) => placed([list, index], instantFlaws(at, 'at')));
  return [
    ...(practice ? practiceFlaws(practice) : []),
    ...log.flatMap((entry, index) => [
      ...placed(['log', index], instantFlaws(entry.sealed, 'sealed')),
      ...(detectors.has(entry.detector) ? [] : placed(['log', index], [lostDetector(entry.detector)])),
      ...entry.custody.flatMap(({ at }, step) => placed(['log', index, 'custody', step], instantFlaws(at, 'at'))),
    ]),
    ...instants('weather', weather),
    ...(agreement ? placed(['agreement'], instantFlaws(agreement.at, 'at')) : []),
    ...instants('earlier', earlier),
    ...earlier.flatMap(({ detector }, index) =>
      detector == null || detectors.has(detector) ? [] : placed(['earlier', index], [lostDetector(detector)]),
    ),
    ...instants('quality', quality),
    ...twiceFlaws(quality),
  ];
}

const placed = (at: readonly Step[], flaws: readonly Flaw[]): readonly PlacedFlaw[] =>
  flaws.map((flaw) => ({ at, flaw }));

/** A detector that the plan does not have. */
export function lostDetector(id: string): Flaw {
  return {
    path: ['detector'],
    found: quoted(id),
    expected: 'the id of a detector of this plan',
    says: `belongs to the detector ${quoted(id)}, which is not in the file.`,
  };
}

function practiceFlaws({ days, daysOff }: Practice): readonly PlacedFlaw[] {
  const hours = days.flatMap(({ from, to }, index) =>
    to > from
      ? []
      : placed(
          ['practice', 'days', index],
          [
            {
              path: ['to'],
              found: quoted(to),
              expected: `a time after ${from}`,
              says: `ends at ${to}, not after it begins at ${from}. Swap the two.`,
            },
          ],
        ),
  );
  const off = daysOff.flatMap((day, index) =>
    instantTrouble(`${day}T00:00:00Z`) === null
      ? []
      : placed(
          ['practice'],
          [
            {
              path: ['daysOff', index],
              found: quoted(day),
              expected: 'a day of the calendar, like 2026-11-26',
              says: `has the day off ${quoted(day)}, which the calendar does not have.`,
            },
          ],
        ),
  );
  return [...hours, ...off];
}

function twiceFlaws(quality: readonly { readonly id: string }[]): readonly PlacedFlaw[] {
  return quality.flatMap(({ id }, index) =>
    quality.findIndex((other) => other.id === id) === index
      ? []
      : placed(
          ['quality', index],
          [
            {
              path: ['id'],
              found: quoted(id),
              expected: 'an id that no other blank or spike has',
              says: `has the id ${quoted(id)}, which another one has. Give one of them another id.`,
            },
          ],
        ),
  );
}
