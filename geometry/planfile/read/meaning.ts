import type { LookedForBy, Override, Protocol, Site, Wall } from '../../plan/model.ts';
import type { Condition, Kit, Reading, Visit } from '../../plan/test-record.ts';
import type { LengthUnit } from '../../units/index.ts';
import type { Flaw } from '../meaning/flaw.ts';
import { heightFlaws, openingFlaws, shapeFlaws } from '../meaning/item.ts';
import { JOB_SECTIONS, type JobSection, jobFlaws, lostDetector } from '../meaning/job.ts';
import {
  instantFlaws,
  kitFlaws,
  overrideFlaws,
  profileFlaws,
  ruleFlaws,
  VISIT_INSTANTS,
  visitFlaws,
  zoneFlaws,
} from '../meaning/section.ts';
import { pointerTo, type Step } from '../pointer.ts';
import { type PlanProblem, quoted } from '../problem.ts';
import { isRecord } from '../schema/walk.ts';
import { placeOf, valueAt } from './place.ts';
import { type Named, namedThings, type Placed, type Soundness, soundEntries, soundItems } from './sound.ts';

/**
 * What the schema cannot say: ids, references, openings in their walls, simple outlines, overrides, times.
 * Takes the file with its defaults filled in; looks only at the parts that are sound, and at every id.
 */
export function meaningProblems(file: unknown, soundness: Soundness): readonly PlanProblem[] {
  const unit: LengthUnit = valueAt(file, ['display', 'length']) === 'metric' ? 'metric' : 'feet-inches';
  const say = (path: readonly Step[], flaws: readonly Flaw[]) => flaws.map((flaw) => problemOf(file, path, flaw));
  const names = namedThings(file);
  return [
    ...idProblems(file, names),
    ...openingProblems(file, names, soundness, unit),
    ...(['opening', 'fixture', 'object'] as const).flatMap((kind) =>
      soundItems(file, soundness, kind).flatMap(({ path, item }) => say(path, heightFlaws(item, unit))),
    ),
    ...(['fixture', 'object'] as const).flatMap((kind) =>
      soundItems(file, soundness, kind).flatMap(({ path, item }) => say(path, shapeFlaws(item.shape))),
    ),
    ...lookedForProblems(file, soundness),
    ...sectionProblems(file, soundness, unit),
    ...readingProblems(file, names, soundness),
    ...jobProblems(file, names, soundness),
  ];
}

function problemOf(file: unknown, from: readonly Step[], { path, found, expected, says }: Flaw): PlanProblem {
  return { pointer: pointerTo([...from, ...path]), found, expected, message: `${placeOf(file, from).thing} ${says}` };
}

function idProblems(file: unknown, names: readonly Named[]): readonly PlanProblem[] {
  const first = new Map<string, Named>();
  const problems: PlanProblem[] = [];
  for (const named of names) {
    const owner = first.get(named.id);
    first.set(named.id, owner ?? named);
    if (!owner) continue;
    const [thing, other] = [placeOf(file, named.path).thing, placeOf(file, owner.path).thing];
    problems.push({
      pointer: pointerTo([...named.path, 'id']),
      found: quoted(named.id),
      expected: 'an id that nothing else in the file has',
      message: `${thing} has the same id as ${other.charAt(0).toLowerCase()}${other.slice(1)}. Give one of them another id.`,
    });
  }
  return problems;
}

function openingProblems(
  file: unknown,
  names: readonly Named[],
  soundness: Soundness,
  unit: LengthUnit,
): readonly PlanProblem[] {
  const walls = names.filter(({ kind }) => kind === 'wall').reverse();
  // Reversed, so that of walls with one id the first wins: the others have a problem of their own.
  const onLevel = new Map(walls.map((wall) => [`${wall.level} ${wall.id}`, wall]));
  const anywhere = new Set(walls.map(({ id }) => id));
  return soundItems(file, soundness, 'opening').flatMap(({ path, item }) => {
    const own = onLevel.get(`${path[1]} ${item.wall}`);
    if (!own) return [problemOf(file, path, noWall(item.wall, anywhere.has(item.wall)))];
    // A wall that is broken itself has its own problem; how long it is cannot be told.
    if (!soundness.at(own.path)) return [];
    return openingFlaws(item, valueAt(file, own.path) as Wall, unit).map((flaw) => problemOf(file, path, flaw));
  });
}

function noWall(id: string, elsewhere: boolean): Flaw {
  const why = elsewhere ? 'which is on another level' : 'which is not in the file';
  return {
    path: ['wall'],
    found: quoted(id),
    expected: 'the id of a wall on the same level',
    says: `belongs to the wall ${quoted(id)}, ${why}. Name a wall of its own level.`,
  };
}

/** What was looked for on each level: rules that do not exist, instants that the calendar does not have. */
function lookedForProblems(file: unknown, soundness: Soundness): readonly PlanProblem[] {
  const levels = valueAt(file, ['levels']);
  if (!Array.isArray(levels)) return [];
  return levels.flatMap((level: unknown, l) => {
    const path = ['levels', l];
    const say = (flaws: readonly Flaw[]) => flaws.map((flaw) => problemOf(file, path, flaw));
    const named = soundEntries(level, 'lookedFor', [...path, 'lookedFor'], soundness) as readonly Placed<string>[];
    const by = soundEntries(
      level,
      'lookedForBy',
      [...path, 'lookedForBy'],
      soundness,
    ) as readonly Placed<LookedForBy>[];
    return [
      ...named.flatMap(({ item, path: at }) => say(ruleFlaws(item, at.slice(2)))),
      ...by.flatMap(({ item, path: at }) => {
        const place = at.slice(2);
        const instants = instantFlaws(item.at, 'at').map((flaw) => ({ ...flaw, path: [...place, ...flaw.path] }));
        return say([...ruleFlaws(item.rule, [...place, 'rule']), ...instants]);
      }),
    ];
  });
}

/** The sections of the top level. A part of a section that is broken takes no other part out of the look. */
function sectionProblems(file: unknown, soundness: Soundness, unit: LengthUnit): readonly PlanProblem[] {
  const problems: PlanProblem[] = [];
  const say = (path: readonly Step[], flaws: readonly Flaw[], thing: string) =>
    problems.push(...flaws.map((flaw) => ({ ...problemOf(file, path, flaw), message: `${thing} ${flaw.says}` })));
  const sound = (path: readonly Step[]) => soundness.at(path);
  const zone = valueAt(file, ['site', 'timeZone']);
  if (sound(['site', 'timeZone'])) say(['site'], zoneFlaws(zone as Site['timeZone']), 'The site');
  const protocol = valueAt(file, ['protocol']);
  const overrides = soundEntries(
    protocol,
    'overrides',
    ['protocol', 'overrides'],
    soundness,
  ) as readonly Placed<Override>[];
  if (sound(['protocol', 'profile'])) {
    const unknown = profileFlaws(protocol as Protocol);
    say(['protocol'], unknown, 'The protocol');
    if (unknown.length === 0) {
      const { profile } = protocol as Protocol;
      overrides.forEach(({ path, item }, index) => {
        const earlier = overrides.slice(0, index).map((placed) => placed.item);
        say(path, overrideFlaws(item, earlier, profile, unit), placeOf(file, path).thing);
      });
    }
  }
  if (sound(['kit'])) say(['kit'], kitFlaws(valueAt(file, ['kit']) as Kit), 'The kit');
  const visit = valueAt(file, ['visit']);
  if (isRecord(visit)) say(['visit'], visitFlaws(soundVisit(visit, soundness)), 'The visit');
  const forecastAt = valueAt(visit, ['forecast', 'at']);
  if (typeof forecastAt === 'string' && sound(['visit', 'forecast', 'at']))
    say(['visit', 'forecast'], instantFlaws(forecastAt, 'at'), 'The forecast');
  for (const { path, item } of soundEntries(
    file,
    'conditions',
    ['conditions'],
    soundness,
  ) as readonly Placed<Condition>[]) {
    say(path, instantFlaws(item.at, 'at'), placeOf(file, path).thing);
  }
  return problems;
}

/** An instant of the wrong shape has its own problem and counts as not known here. */
function soundVisit(visit: Readonly<Record<string, unknown>>, soundness: Soundness): Visit {
  const at = (key: keyof Visit) => (soundness.at(['visit', key]) ? ((visit[key] ?? null) as string | null) : null);
  // Only the instants are looked at.
  return Object.fromEntries(VISIT_INSTANTS.map((key) => [key, at(key)])) as unknown as Visit;
}

/** The records of the job: a list with a broken entry is left out whole, its own problems say why. */
function jobProblems(file: unknown, names: readonly Named[], soundness: Soundness): readonly PlanProblem[] {
  const sound = JOB_SECTIONS.filter((key) => valueAt(file, [key]) !== undefined && soundness.at([key]));
  const job = Object.fromEntries(sound.map((key) => [key, valueAt(file, [key])])) as JobSection;
  const flaws = jobFlaws(job, new Set(names.filter(({ kind }) => kind === 'detector').map(({ id }) => id)));
  return flaws.map(({ at, flaw }) => problemOf(file, at, flaw));
}

function readingProblems(file: unknown, names: readonly Named[], soundness: Soundness): readonly PlanProblem[] {
  const detectors = new Set(names.filter(({ kind }) => kind === 'detector').map(({ id }) => id));
  const readings = soundEntries(file, 'readings', ['readings'], soundness) as readonly Placed<Reading>[];
  return readings
    .filter(({ item }) => !detectors.has(item.detector))
    .map(({ path, item }) => problemOf(file, path, lostDetector(item.detector)));
}
