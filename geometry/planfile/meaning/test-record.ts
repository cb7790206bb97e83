import type { Plan } from '../../plan/model.ts';
import type { Practice } from '../../plan/test-record.ts';
import { instantError } from '../instant.ts';
import { type Flaw, quoted, type Step } from '../problem.ts';
import { instantFlaws } from './section.ts';

/** A flaw and the item that has it, as a path from the root of the file. */
export interface PlacedFlaw {
  readonly at: readonly Step[];
  readonly flaw: Flaw;
}

/** The optional sections of the file that record the test. */
export const RECORD_SECTIONS = ['practice', 'log', 'weather', 'agreement', 'earlier', 'quality', 'report'] as const;
export type RecordSection = Pick<Plan, (typeof RECORD_SECTIONS)[number]>;

/**
 * Returns the semantic errors in the records of the test: dates and instants that do not exist, working hours that
 * end before they begin, entries for a detector that is not in the plan, a second log entry for one detector, duplicate
 * ids of blanks and spikes.
 */
export function recordFlaws(record: RecordSection, detectors: ReadonlySet<string>): readonly PlacedFlaw[] {
  const { practice, log = [], weather = [], agreement, earlier = [], quality = [], report } = record;
  const instants = (list: string, items: readonly { readonly at: string | null }[]) =>
    items.flatMap(({ at }, index) => placed([list, index], instantFlaws(at, 'at')));
  return [
    ...(practice ? practiceFlaws(practice) : []),
    ...log.flatMap((entry, index) => [
      ...placed(['log', index], instantFlaws(entry.sealed, 'sealed')),
      ...(detectors.has(entry.detector) ? [] : placed(['log', index], [unknownDetectorFlaw(entry.detector)])),
      ...entry.custody.flatMap(({ at }, step) => placed(['log', index, 'custody', step], instantFlaws(at, 'at'))),
    ]),
    ...secondEntries(log),
    ...instants('weather', weather),
    ...(agreement ? placed(['agreement'], instantFlaws(agreement.at, 'at')) : []),
    ...instants('earlier', earlier),
    ...earlier.flatMap(({ detector }, index) =>
      detector == null || detectors.has(detector) ? [] : placed(['earlier', index], [unknownDetectorFlaw(detector)]),
    ),
    ...instants('quality', quality),
    ...twiceFlaws(quality),
    ...(report?.laboratory
      ? placed(
          ['report', 'laboratory'],
          [
            ...instantFlaws(report.laboratory.analyzed, 'analyzed'),
            ...instantFlaws(report.laboratory.reported, 'reported'),
          ],
        )
      : []),
  ];
}

const placed = (at: readonly Step[], flaws: readonly Flaw[]): readonly PlacedFlaw[] =>
  flaws.map((flaw) => ({ at, flaw }));

/** Returns the flaw of a reference to a detector that is not in the plan. */
export function unknownDetectorFlaw(id: string): Flaw {
  return {
    path: ['detector'],
    found: quoted(id),
    expected: 'the id of a detector of this plan',
    statement: `belongs to the detector ${quoted(id)}, which is not in the file.`,
  };
}

/** Returns a flaw for each second entry of a detector: it would never be read, so its serial number, seal and transfers would be lost. */
function secondEntries(log: NonNullable<Plan['log']>): readonly PlacedFlaw[] {
  const first = new Map<string, number>();
  return log.flatMap(({ detector }, index) => {
    const known = first.get(detector);
    if (known === undefined) {
      first.set(detector, index);
      return [];
    }
    return placed(
      ['log', index],
      [
        {
          path: ['detector'],
          found: quoted(detector),
          expected: 'a detector that no other log entry has',
          statement: `belongs to the detector ${quoted(detector)}, as log entry ${known + 1} does. Put both into one entry.`,
        },
      ],
    );
  });
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
              statement: `ends at ${to}, not after it begins at ${from}. Swap the two.`,
            },
          ],
        ),
  );
  const off = daysOff.flatMap((day, index) =>
    instantError(`${day}T00:00:00Z`) === null
      ? []
      : placed(
          ['practice'],
          [
            {
              path: ['daysOff', index],
              found: quoted(day),
              expected: 'a day of the calendar, like 2026-11-26',
              statement: `has the day off ${quoted(day)}, which the calendar does not have.`,
            },
          ],
        ),
  );
  return [...hours, ...off];
}

function twiceFlaws(quality: readonly { readonly id: string }[]): readonly PlacedFlaw[] {
  const seen = new Set<string>();
  return quality.flatMap(({ id }, index) =>
    seen.size < seen.add(id).size
      ? []
      : placed(
          ['quality', index],
          [
            {
              path: ['id'],
              found: quoted(id),
              expected: 'an id that no other blank or spike has',
              statement: `has the id ${quoted(id)}, which another one has. Give one of them another id.`,
            },
          ],
        ),
  );
}
