import * as v from 'valibot';
import { itemName } from '../plan/items.ts';
import { ITEM_KINDS, type Item, type ItemKind, itemsOf } from '../plan/kinds.ts';
import type { Level, Opening, Plan, Protocol, Tracing } from '../plan/model.ts';
import { heightFlaws, openingFlaws, shapeFlaws } from '../planfile/meaning/item.ts';
import {
  instantFlaws,
  kitFlaws,
  overrideFlaws,
  profileFlaws,
  timeZoneFlaws,
  visitFlaws,
} from '../planfile/meaning/section.ts';
import { RECORD_SECTIONS, recordFlaws } from '../planfile/meaning/test-record.ts';
import { type Flaw, foundWords, quoted } from '../planfile/problem.ts';
import { describePath } from '../planfile/read/describe-path.ts';
import { identifiedItems } from '../planfile/read/valid-parts.ts';
import {
  DetectorSchema,
  FixtureSchema,
  LevelSchema,
  ObjectSchema,
  OpeningSchema,
  RoomSchema,
  WallSchema,
} from '../planfile/schema/level.ts';
import { PlanSchema } from '../planfile/schema/plan.ts';
import { TracingSchema } from '../planfile/schema/tracing.ts';
import { expectedAt, type Path } from '../planfile/schema/walk.ts';
import type { LengthUnit } from '../units/index.ts';

/** The edited plan, or why the edit is refused: one or two sentences, naming the item first and the remedy last. */
export type EditResult = { readonly ok: true; readonly plan: Plan } | { readonly ok: false; readonly reason: string };

const ITEM_SCHEMA: Readonly<Record<ItemKind, v.GenericSchema>> = {
  wall: WallSchema,
  opening: OpeningSchema,
  room: RoomSchema,
  fixture: FixtureSchema,
  object: ObjectSchema,
  detector: DetectorSchema,
};
const SECTIONS = [
  'title',
  'display',
  'site',
  'protocol',
  'tapeTolerance',
  'kit',
  'visit',
  'conditions',
  'readings',
  ...RECORD_SECTIONS,
] as const;
const LEVEL_KEYS = ['name', 'order', 'ceiling', 'living', 'ground'] as const;
/** Optional keys of a level. */
const LEVEL_EXTRAS = ['ceilingAnswered', 'livingAnswered', 'groundAnswered', 'lookedFor', 'lookedForBy'] as const;

/**
 * Returns `after` if it is a plan that the reader would accept; else the first reason why it would not. Checks only
 * objects that are not identical to those in `before`, which was valid: fast enough for each frame of a drag.
 */
export function checkedPlan(before: Plan, after: Plan): EditResult {
  const reason = sectionProblem(before, after) ?? levelsProblem(before, after);
  return reason === null ? { ok: true, plan: after } : { ok: false, reason };
}

function sectionProblem(before: Plan, after: Plan): string | null {
  const unit = after.display.length;
  for (const key of SECTIONS) {
    if (before[key] === after[key]) continue;
    // An optional section may disappear.
    if (after[key] === undefined) continue;
    const problem = structureProblem(PlanSchema.entries[key], after[key], `The ${key}`);
    if (problem) return problem;
  }
  const changed = (key: (typeof SECTIONS)[number]) => before[key] !== after[key];
  return (
    (changed('site') ? said('The site', timeZoneFlaws(after.site.timeZone)) : null) ??
    (changed('protocol') ? protocolProblem(after.protocol, unit) : null) ??
    (changed('kit') ? said('The kit', kitFlaws(after.kit)) : null) ??
    (changed('visit') ? said('The visit', visitFlaws(after.visit)) : null) ??
    (changed('conditions')
      ? said(
          'A condition',
          after.conditions.flatMap(({ at }) => instantFlaws(at, 'at')),
        )
      : null) ??
    (changed('readings') ? readingsProblem(after) : null) ??
    (RECORD_SECTIONS.some(changed) ? recordsProblem(after) : null)
  );
}

function protocolProblem(protocol: Protocol, unit: LengthUnit): string | null {
  const { profile, overrides } = protocol;
  const unknown = said('The protocol', profileFlaws(protocol));
  const flaws = () => {
    const earlier = new Set<string>();
    return overrides.flatMap((one) => {
      const found = overrideFlaws(one, earlier, profile, unit);
      earlier.add(one.rule);
      return found;
    });
  };
  return unknown ?? said('An override', flaws());
}

function levelsProblem(before: Plan, after: Plan): string | null {
  if (before.levels === after.levels) return null;
  const unit = after.display.length;
  const old = new Map(before.levels.map((level) => [level.id, level]));
  for (const level of after.levels) {
    const was = old.get(level.id);
    const problem = level === was ? null : levelProblem(was, level, unit);
    if (problem) return problem;
  }
  const ids = identifiedItems(after);
  const same = identifiedItems(before);
  if (ids.length === same.length && ids.every(({ id }, index) => id === same[index]?.id)) return null;
  const seen = new Set<string>();
  const twice = ids.find(({ id }) => seen.size === seen.add(id).size);
  return twice
    ? `The id ${quoted(twice.id)} belongs to something else already.`
    : (readingsProblem(after) ?? recordsProblem(after));
}

const isExtra = (key: string): boolean => LEVEL_EXTRAS.some((each) => each === key);

function levelProblem(was: Level | undefined, level: Level, unit: LengthUnit): string | null {
  for (const key of ['id', ...LEVEL_KEYS, ...LEVEL_EXTRAS] as const) {
    // An optional key may disappear.
    if (was?.[key] === level[key] || (isExtra(key) && level[key] === undefined)) continue;
    const problem = structureProblem(LevelSchema.entries[key], level[key], 'The level', [key]);
    if (problem) return problem;
  }
  if (was?.lookedForBy !== level.lookedForBy) {
    const flaws = (level.lookedForBy ?? []).flatMap(({ at }) => instantFlaws(at, 'at'));
    const problem = said('An answer of the walk round', flaws);
    if (problem) return problem;
  }
  if (level.tracing && level.tracing !== was?.tracing) {
    const problem = structureProblem(
      TracingSchema,
      forValidation(level.tracing, was?.tracing),
      'The picture under the level',
    );
    if (problem) return problem;
  }
  for (const kind of ITEM_KINDS) {
    const unchanged = new Set<Item>(was ? itemsOf(was, kind) : []);
    for (const item of itemsOf<ItemKind>(level, kind)) {
      if (unchanged.has(item)) continue;
      const problem = structureProblem(ITEM_SCHEMA[kind], item, itemName(kind, item)) ?? itemProblem(kind, item, unit);
      if (problem) return problem;
    }
  }
  return openingsProblem(was, level, unit);
}

/** An unchanged picture is not validated again, because it has megabytes and this runs on every move of a drag. */
function forValidation(tracing: Tracing, was: Tracing | undefined): Tracing {
  return tracing.image === was?.image ? { ...tracing, image: SHORT_PICTURE } : tracing;
}
const SHORT_PICTURE = 'data:image/png;base64,AAAA';

function itemProblem(kind: ItemKind, item: Item, unit: LengthUnit): string | null {
  const flaws = [
    ...('bottom' in item ? heightFlaws(item, unit) : []),
    ...('shape' in item ? shapeFlaws(item.shape) : []),
  ];
  return said(itemName(kind, item), flaws);
}

/** Checks the openings that changed, and those whose wall changed. */
function openingsProblem(was: Level | undefined, level: Level, unit: LengthUnit): string | null {
  if (was && was.walls === level.walls && was.openings === level.openings) return null;
  const unchanged = new Set<unknown>(was ? [...was.walls, ...was.openings] : []);
  const walls = new Map(level.walls.map((wall) => [wall.id, wall]));
  for (const opening of level.openings as readonly Opening[]) {
    const wall = walls.get(opening.wall);
    const name = itemName('opening', opening);
    if (!wall) return `${name} has lost its wall. Put it on a wall of this level.`;
    if (unchanged.has(opening) && unchanged.has(wall)) continue;
    const problem = said(name, openingFlaws(opening, wall, unit));
    if (problem) return problem;
  }
  return null;
}

function readingsProblem(plan: Plan): string | null {
  const ids = detectorIds(plan);
  const lost = plan.readings.find(({ detector }) => !ids.has(detector));
  return lost ? `A reading belongs to the detector ${quoted(lost.detector)}, which is not in the plan.` : null;
}

function recordsProblem(plan: Plan): string | null {
  const [first] = recordFlaws(plan, detectorIds(plan));
  return first ? said(describePath(plan, first.at).item, [first.flaw]) : null;
}

const detectorIds = ({ levels }: Plan): ReadonlySet<string> =>
  new Set(levels.flatMap(({ detectors }) => detectors.map(({ id }) => id)));

/** Returns the problem of a value with the wrong type: a fault of the app, or of a field that accepts too much. The plan stays unchanged. */
function structureProblem(schema: v.GenericSchema, value: unknown, thing: string, at: Path = []): string | null {
  const { issues } = v.safeParse(schema, value, { abortEarly: true });
  const [issue] = issues ?? [];
  if (!issue) return null;
  const path = (issue.path ?? []).map(({ key }) => key as string | number);
  const key = [...at, ...path].join('.');
  return `${thing}${key === '' ? '' : `: "${key}"`} is ${foundWords(issue.input)}, needs ${expectedAt(schema, path)}.`;
}

function said(thing: string, flaws: readonly Flaw[]): string | null {
  const [flaw] = flaws;
  return flaw ? `${thing} ${flaw.statement}` : null;
}
