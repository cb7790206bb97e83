import type { Plan } from '../plan/model.ts';
import { foundWords, type PlanProblem, pointerTo, quoted, type Step } from './problem.ts';
import { describePath } from './read/describe-path.ts';
import { readJson } from './read/json.ts';
import { meaningProblems } from './read/meaning.ts';
import { misspelledKeyProblems } from './read/misspelled-keys.ts';
import { structureProblems } from './read/structure.ts';
import { identifiedItems, ValidParts } from './read/valid-parts.ts';
import { PlanSchema, VERSION } from './schema/plan.ts';
import {
  isRecord,
  type LongList,
  longLists,
  withDefaults,
  withListsCut,
  withoutControlCharacters,
} from './schema/walk.ts';

export type { PlanProblem } from './problem.ts';

export type ParsedPlan =
  | { readonly ok: true; readonly plan: Plan }
  | { readonly ok: false; readonly problems: readonly PlanProblem[] };

/**
 * Parses a plan file. Text that is not JSON, not an object or of a newer version is refused with that one problem. Otherwise all problems
 * are returned at once: structure (JSON Schema) first, then meaning (what a schema cannot express). In a list that is too long, only the
 * entries up to its limit are checked. Never throws and never repairs; omitted keys get their defaults, and an
 * omitted north is not answered.
 *
 * Unknown keys are preserved, a key named __proto__ as a plain key; a key that is almost a known one is refused as
 * misspelled.
 * Control characters are removed from texts; notes keep their line ends. All coordinates are finite.
 */
export function parsePlan(text: string): ParsedPlan {
  const json = readJson(text);
  if (!json.ok) return refused([notJson(text, json)]);
  const strange = headProblem(json.value);
  if (strange) return refused([strange]);
  const foreign = formatProblem(json.value);
  const long = longLists(PlanSchema, json.value);
  const value = withoutControlCharacters(PlanSchema, withListsCut(json.value, long));
  const duplicateKeys = json.duplicateKeys.map((path) => doubledProblem(value, path));
  const structure = structureProblems(value);
  const file = withDefaults(PlanSchema, value);
  // A reference to an entry beyond the limit of its list is not reported as missing.
  const names = identifiedItems(long.length > 0 ? withoutControlCharacters(PlanSchema, json.value) : value);
  const meaning = meaningProblems(file, new ValidParts(structure.map(({ path }) => path)), names);
  const shapes = structure.filter(({ pointer }) => pointer !== '/format').map(({ path: _, ...problem }) => problem);
  const tooLong = long.map((list) => longListProblem(json.value, list));
  const problems = [...foreign, ...tooLong, ...duplicateKeys, ...misspelledKeyProblems(value), ...shapes, ...meaning];
  // No problems: the value matches the schema, so it is a plan.
  return problems.length === 0 ? { ok: true, plan: withNorthOf(value, file as Plan) } : refused(problems);
}

/** Returns the plan with north not answered if the file has none: its default is a place to begin, and direct sun depends on it. */
function withNorthOf(value: unknown, plan: Plan): Plan {
  const site = isRecord(value) ? value.site : undefined;
  if (isRecord(site) && Object.hasOwn(site, 'north')) return plan;
  return { ...plan, site: { ...plan.site, northAnswered: false } };
}

function refused(problems: readonly PlanProblem[]): ParsedPlan {
  return { ok: false, problems };
}

function notJson(text: string, at: { line: number; column: number; found: string; expected: string }): PlanProblem {
  if (text.trim() === '' || text === '\uFEFF') {
    return { pointer: '', found: 'an empty file', expected: 'a plan file', message: 'The file is empty.' };
  }
  const place = `line ${at.line}, column ${at.column}`;
  const found = `${at.found} at ${place}`;
  const message = `The file is damaged or is not a plan: ${place} has ${at.found}, needs ${at.expected}.`;
  return { pointer: '', found, expected: at.expected, message };
}

/** Returns the problem that makes further checks pointless; null for none. */
function headProblem(value: unknown): PlanProblem | null {
  if (!isRecord(value)) {
    const found = foundWords(value);
    return { pointer: '', found, expected: 'an object', message: `The file holds ${found}, not a plan.` };
  }
  const { format, version } = value;
  if (format === 'stillspot-plan' && typeof version === 'number' && version > VERSION) {
    const message = `This file is version ${version}; this Stillspot reads version ${VERSION}. Open it with a newer Stillspot.`;
    return { pointer: '/version', found: String(version), expected: String(VERSION), message };
  }
  return null;
}

/** Returns the problem of a file of another format; its other problems are listed too. */
function formatProblem(value: unknown): readonly PlanProblem[] {
  const format = isRecord(value) ? value.format : undefined;
  if (format === 'stillspot-plan') return [];
  const [found, expected] = [foundWords(format), '"stillspot-plan"'];
  const message = `This is not a Stillspot plan: "format" is ${format === undefined ? 'missing' : found}, needs ${expected}.`;
  return [{ pointer: '/format', found, expected, message }];
}

function longListProblem(value: unknown, { path, length, most }: LongList): PlanProblem {
  const { item, key } = describePath(value, path);
  const [found, expected] = [`a list of ${length}`, `at most ${most.toLocaleString('en-US')} entries`];
  return { pointer: pointerTo(path), found, expected, message: `${item}: "${key}" is ${found}, needs ${expected}.` };
}

function doubledProblem(value: unknown, path: readonly Step[]): PlanProblem {
  const key = quoted(String(path.at(-1)));
  const { item } = describePath(value, path.slice(0, -1));
  const message = `${item} has the key ${key} twice. Take one of the two out.`;
  return { pointer: pointerTo(path), found: `the key ${key} twice`, expected: 'each key once', message };
}
