import { counted } from '../../../geometry/messages/index.ts';
import type { Level, Plan } from '../../../geometry/plan/model.ts';

/** Differences between two states of a plan, in words. */

type ListName = 'walls' | 'openings' | 'rooms' | 'fixtures' | 'objects' | 'detectors';
const LISTS: readonly (readonly [list: ListName, one: string, many?: string])[] = [
  ['walls', 'wall'],
  ['openings', 'door or window', 'doors and windows'],
  ['rooms', 'room name'],
  ['fixtures', 'fixture'],
  ['objects', 'piece of furniture', 'pieces of furniture'],
  ['detectors', 'detector'],
];

/** Returns what changed from `before` to `after`: levels first, then items, then other sections; empty for the same plan. */
export function planChanges(before: Plan, after: Plan): readonly string[] {
  const words: string[] = [];
  const levels = matched(before.levels, after.levels);
  if (levels.added.length > 0) words.push(`${counted(levels.added.length, 'level')} added`);
  if (levels.gone.length > 0) words.push(`${counted(levels.gone.length, 'level')} removed`);
  for (const [list, one, many] of LISTS) words.push(...listChanges(before, after, list, one, many));
  if (levels.changed.some(([a, b]) => differs(head(a), head(b)))) words.push('the level itself changed');
  if (before.title !== after.title) words.push('title changed');
  for (const key of Object.keys(REST) as (keyof typeof REST)[])
    if (differs(before[key], after[key])) words.push(`${REST[key]} changed`);
  const isOther = words.length === 0 && differs(before, after);
  return isOther ? ['other entries of the file changed'] : words;
}

/** Names of all sections of the plan: a section missing here could not be restored from an earlier version. */
const REST: Readonly<Record<Exclude<keyof Plan, 'format' | 'version' | 'title' | 'levels'>, string>> = {
  site: 'site',
  protocol: 'rules',
  tapeTolerance: "tape's tolerance",
  display: 'units',
  kit: 'kit',
  visit: 'times',
  conditions: 'conditions of the house',
  readings: 'results',
  log: 'log of the detectors',
  weather: 'weather',
  agreement: 'non-interference agreement',
  report: 'report',
  earlier: 'earlier tests',
  practice: 'working hours',
  quality: 'quality checks',
};

function listChanges(before: Plan, after: Plan, list: ListName, one: string, many?: string): readonly string[] {
  const of = ({ levels }: Plan) => levels.flatMap((level): readonly { readonly id: string }[] => level[list]);
  const { added, gone, changed } = matched(of(before), of(after));
  const parts: readonly (readonly [count: number, done: string])[] = [
    [added.length, 'added'],
    [gone.length, 'removed'],
    [changed.filter(([a, b]) => differs(a, b)).length, 'changed'],
  ];
  return parts.filter(([count]) => count > 0).map(([count, done]) => `${counted(count, one, many)} ${done}`);
}

interface Matched<T> {
  readonly added: readonly T[];
  readonly gone: readonly T[];
  readonly changed: readonly (readonly [before: T, after: T])[];
}

function matched<T extends { readonly id: string }>(before: readonly T[], after: readonly T[]): Matched<T> {
  const [old, now] = [new Map(before.map((each) => [each.id, each])), new Map(after.map((each) => [each.id, each]))];
  return {
    added: after.filter(({ id }) => !old.has(id)),
    gone: before.filter(({ id }) => !now.has(id)),
    changed: before.flatMap((each) => {
      const later = now.get(each.id);
      return later ? [[each, later] as const] : [];
    }),
  };
}

/** Returns the properties of a level without its items. */
function head(level: Level): object {
  return { ...level, walls: 0, openings: 0, rooms: 0, fixtures: 0, objects: 0, detectors: 0 };
}

function differs(a: unknown, b: unknown): boolean {
  return a !== b && JSON.stringify(a) !== JSON.stringify(b);
}

/** Returns the contents of a plan in one line: "2 levels, 14 walls, 3 detectors". */
export function countsOf({ levels }: Plan): string {
  const rows: readonly (readonly [ListName, string])[] = [
    ['walls', 'wall'],
    ['rooms', 'room'],
    ['detectors', 'detector'],
  ];
  return [
    counted(levels.length, 'level'),
    ...rows.map(([list, one]) =>
      counted(
        levels.reduce((sum, level) => sum + level[list].length, 0),
        one,
      ),
    ),
  ].join(', ');
}
