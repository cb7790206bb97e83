import type { LookedForBy, Override, Protocol, Site, Wall } from '../../plan/model.ts';
import { lowerFirst } from '../../plan/nouns.ts';
import type { Condition, Kit, Reading, Visit } from '../../plan/test-record.ts';
import type { LengthUnit } from '../../units/index.ts';
import { heightFlaws, openingFlaws, shapeFlaws } from '../meaning/item.ts';
import {
  instantFlaws,
  kitFlaws,
  overrideFlaws,
  profileFlaws,
  ruleFlaws,
  timeZoneFlaws,
  VISIT_INSTANTS,
  visitFlaws,
} from '../meaning/section.ts';
import { RECORD_SECTIONS, type RecordSection, recordFlaws, unknownDetectorFlaw } from '../meaning/test-record.ts';
import { type Flaw, type PlanProblem, pointerTo, quoted, type Step } from '../problem.ts';
import { isRecord } from '../schema/walk.ts';
import { describePath, valueAt } from './describe-path.ts';
import { type Identified, type Placed, type ValidParts, validEntries, validItems } from './valid-parts.ts';

/**
 * Returns the problems that the schema cannot express: ids, references, openings in their walls, simple outlines,
 * overrides, times. Takes the file with its defaults filled in; checks only the structurally valid parts, and every id.
 *
 * @param names every element with an id in the file as it was given
 */
export function meaningProblems(
  file: unknown,
  validParts: ValidParts,
  names: readonly Identified[],
): readonly PlanProblem[] {
  const unit: LengthUnit = valueAt(file, ['display', 'length']) === 'metric' ? 'metric' : 'feet-inches';
  const addProblems = (path: readonly Step[], flaws: readonly Flaw[]) =>
    flaws.map((flaw) => problemOf(file, path, flaw));
  return [
    ...idProblems(file, names),
    ...openingProblems(file, names, validParts, unit),
    ...(['opening', 'fixture', 'object'] as const).flatMap((kind) =>
      validItems(file, validParts, kind).flatMap(({ path, item }) => addProblems(path, heightFlaws(item, unit))),
    ),
    ...(['fixture', 'object'] as const).flatMap((kind) =>
      validItems(file, validParts, kind).flatMap(({ path, item }) => addProblems(path, shapeFlaws(item.shape))),
    ),
    ...lookedForProblems(file, validParts),
    ...sectionProblems(file, validParts, unit),
    ...readingProblems(file, names, validParts),
    ...recordProblems(file, names, validParts),
  ];
}

function problemOf(file: unknown, from: readonly Step[], { path, found, expected, statement }: Flaw): PlanProblem {
  return {
    pointer: pointerTo([...from, ...path]),
    found,
    expected,
    message: `${describePath(file, from).item} ${statement}`,
  };
}

function idProblems(file: unknown, names: readonly Identified[]): readonly PlanProblem[] {
  const first = new Map<string, Identified>();
  const problems: PlanProblem[] = [];
  for (const identified of names) {
    const owner = first.get(identified.id);
    first.set(identified.id, owner ?? identified);
    if (!owner) continue;
    const [thing, other] = [describePath(file, identified.path).item, describePath(file, owner.path).item];
    problems.push({
      pointer: pointerTo([...identified.path, 'id']),
      found: quoted(identified.id),
      expected: 'an id that nothing else in the file has',
      message: `${thing} has the same id as ${lowerFirst(other)}. Give one of them another id.`,
    });
  }
  return problems;
}

function openingProblems(
  file: unknown,
  names: readonly Identified[],
  validParts: ValidParts,
  unit: LengthUnit,
): readonly PlanProblem[] {
  const walls = names.filter(({ kind }) => kind === 'wall').reverse();
  // Reversed so that the first of several walls with one id wins: the others have a duplicate-id problem.
  const onLevel = new Map(walls.map((wall) => [`${wall.level} ${wall.id}`, wall]));
  const anywhere = new Set(walls.map(({ id }) => id));
  return validItems(file, validParts, 'opening').flatMap(({ path, item }) => {
    const own = onLevel.get(`${path[1]} ${item.wall}`);
    if (!own) return [problemOf(file, path, noWall(item.wall, anywhere.has(item.wall)))];
    // An invalid wall has its own problem, and its length is not known.
    if (!validParts.at(own.path)) return [];
    return openingFlaws(item, valueAt(file, own.path) as Wall, unit).map((flaw) => problemOf(file, path, flaw));
  });
}

function noWall(id: string, elsewhere: boolean): Flaw {
  const why = elsewhere ? 'which is on another level' : 'which is not in the file';
  return {
    path: ['wall'],
    found: quoted(id),
    expected: 'the id of a wall on the same level',
    statement: `belongs to the wall ${quoted(id)}, ${why}. Name a wall of its own level.`,
  };
}

/** Checks `lookedFor` of each level: rules that do not exist, instants that are not in the calendar. */
function lookedForProblems(file: unknown, validParts: ValidParts): readonly PlanProblem[] {
  const levels = valueAt(file, ['levels']);
  if (!Array.isArray(levels)) return [];
  return levels.flatMap((level: unknown, l) => {
    const path = ['levels', l];
    const addProblems = (flaws: readonly Flaw[]) => flaws.map((flaw) => problemOf(file, path, flaw));
    const identified = validEntries(
      level,
      'lookedFor',
      [...path, 'lookedFor'],
      validParts,
    ) as readonly Placed<string>[];
    const by = validEntries(
      level,
      'lookedForBy',
      [...path, 'lookedForBy'],
      validParts,
    ) as readonly Placed<LookedForBy>[];
    return [
      ...identified.flatMap(({ item, path: at }) => addProblems(ruleFlaws(item, at.slice(2)))),
      ...by.flatMap(({ item, path: at }) => {
        const place = at.slice(2);
        const { start = null, end = null } = item.sun ?? {};
        const instants = [
          ...instantFlaws(item.at, 'at'),
          ...[...instantFlaws(start, 'start'), ...instantFlaws(end, 'end')].map((flaw) => ({
            ...flaw,
            path: ['sun', ...flaw.path],
          })),
        ].map((flaw) => ({ ...flaw, path: [...place, ...flaw.path] }));
        return addProblems([...ruleFlaws(item.rule, [...place, 'rule']), ...instants]);
      }),
    ];
  });
}

/** Checks the top-level sections. If one part of a section is invalid, the other parts are still checked. */
function sectionProblems(file: unknown, validParts: ValidParts, unit: LengthUnit): readonly PlanProblem[] {
  const problems: PlanProblem[] = [];
  const addProblems = (path: readonly Step[], flaws: readonly Flaw[], thing: string) =>
    problems.push(...flaws.map((flaw) => ({ ...problemOf(file, path, flaw), message: `${thing} ${flaw.statement}` })));
  const sound = (path: readonly Step[]) => validParts.at(path);
  const zone = valueAt(file, ['site', 'timeZone']);
  if (sound(['site', 'timeZone'])) addProblems(['site'], timeZoneFlaws(zone as Site['timeZone']), 'The site');
  const protocol = valueAt(file, ['protocol']);
  const overrides = validEntries(
    protocol,
    'overrides',
    ['protocol', 'overrides'],
    validParts,
  ) as readonly Placed<Override>[];
  if (sound(['protocol', 'profile'])) {
    const unknown = profileFlaws(protocol as Protocol);
    addProblems(['protocol'], unknown, 'The protocol');
    if (unknown.length === 0) {
      const { profile } = protocol as Protocol;
      const earlier = new Set<string>();
      for (const { path, item } of overrides) {
        addProblems(path, overrideFlaws(item, earlier, profile, unit), describePath(file, path).item);
        earlier.add(item.rule);
      }
    }
  }
  if (sound(['kit'])) addProblems(['kit'], kitFlaws(valueAt(file, ['kit']) as Kit), 'The kit');
  const visit = valueAt(file, ['visit']);
  if (isRecord(visit)) addProblems(['visit'], visitFlaws(validVisit(visit, validParts)), 'The visit');
  const forecastAt = valueAt(visit, ['forecast', 'at']);
  if (typeof forecastAt === 'string' && sound(['visit', 'forecast', 'at']))
    addProblems(['visit', 'forecast'], instantFlaws(forecastAt, 'at'), 'The forecast');
  for (const { path, item } of validEntries(
    file,
    'conditions',
    ['conditions'],
    validParts,
  ) as readonly Placed<Condition>[]) {
    addProblems(path, instantFlaws(item.at, 'at'), describePath(file, path).item);
  }
  return problems;
}

/** An instant of the wrong type has its own problem and counts as null here. */
function validVisit(visit: Readonly<Record<string, unknown>>, validParts: ValidParts): Visit {
  const at = (key: keyof Visit) => (validParts.at(['visit', key]) ? ((visit[key] ?? null) as string | null) : null);
  // The checks read only the instants.
  return Object.fromEntries(VISIT_INSTANTS.map((key) => [key, at(key)])) as unknown as Visit;
}

/** Checks the records of the test: a list with an invalid entry is skipped, the entry has its own problems. */
function recordProblems(file: unknown, names: readonly Identified[], validParts: ValidParts): readonly PlanProblem[] {
  const sound = RECORD_SECTIONS.filter((key) => valueAt(file, [key]) !== undefined && validParts.at([key]));
  const job = Object.fromEntries(sound.map((key) => [key, valueAt(file, [key])])) as RecordSection;
  const flaws = recordFlaws(job, new Set(names.filter(({ kind }) => kind === 'detector').map(({ id }) => id)));
  return flaws.map(({ at, flaw }) => problemOf(file, at, flaw));
}

function readingProblems(file: unknown, names: readonly Identified[], validParts: ValidParts): readonly PlanProblem[] {
  const detectors = new Set(names.filter(({ kind }) => kind === 'detector').map(({ id }) => id));
  const readings = validEntries(file, 'readings', ['readings'], validParts) as readonly Placed<Reading>[];
  return readings
    .filter(({ item }) => !detectors.has(item.detector))
    .map(({ path, item }) => problemOf(file, path, unknownDetectorFlaw(item.detector)));
}
