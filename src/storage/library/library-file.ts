import * as v from 'valibot';
import type { Plan } from '../../../geometry/plan/model.ts';
import { type PlanProblem, parsePlan } from '../../../geometry/planfile/parse.ts';
import { foundWords, pointerTo, type Step } from '../../../geometry/planfile/problem.ts';
import { readJson } from '../../../geometry/planfile/read/json.ts';
import { writePlan } from '../../../geometry/planfile/write.ts';
import { joinText, splitText, textHash } from '../long-texts.ts';
import type { FileProblem } from '../plan-files.ts';
import { VERSION_REASONS, type VersionReason } from './records.ts';

/**
 * One file with the whole library: `*.plans.json`. Each plan is written as in a plan file; earlier versions are texts, whose pictures are
 * stored once at the end. A file with a problem is refused whole, with every problem and its place.
 */
const FORMAT = 'stillspot-shelf';
const VERSION = 1;

interface FiledVersion {
  /** ms since 1970. */
  readonly at: number;
  readonly why: VersionReason;
  readonly text: string;
}
export interface FiledPlan {
  readonly id: string;
  readonly createdAt: number;
  readonly changedAt: number;
  readonly binnedAt: number | null;
  readonly text: string;
  readonly versions: readonly FiledVersion[];
}
export interface ReadPlan extends FiledPlan {
  readonly plan: Plan;
}
export type ReadLibraryFile =
  | { readonly ok: true; readonly plans: readonly ReadPlan[] }
  | { readonly ok: false; readonly problems: readonly FileProblem[] };

/** Returns the text of the file. Every plan must be valid. `now` is in ms since 1970. */
export function writeLibraryFile(plans: readonly FiledPlan[], now: number): string {
  const longTexts = new Map<string, string>();
  const written = plans.map(({ text, versions, ...times }) => {
    const head = JSON.stringify({ ...times, versions: versions.map((version) => versionJson(version, longTexts)) });
    return `${head.slice(0, -1)},\n"plan": ${text.trimEnd()}}`;
  });
  const head = `"format": "${FORMAT}", "version": ${VERSION}, "savedAt": ${now}`;
  return `{ ${head},\n"plans": [\n${written.join(',\n')}\n],\n"pictures": ${JSON.stringify(Object.fromEntries(longTexts))} }\n`;
}

function versionJson({ text: whole, ...version }: FiledVersion, longTexts: Map<string, string>): object {
  const { text, longTexts: found } = splitText(whole);
  for (const [name, long] of found) longTexts.set(name, long);
  return { ...version, ...text };
}

const Time = v.pipe(v.number(), v.finite(), v.minValue(0));
const LibrarySchema = v.object({
  plans: v.array(
    v.object({
      id: v.pipe(v.string(), v.regex(/^[a-z0-9-]{1,60}$/, 'an id of small letters, digits and dashes')),
      createdAt: Time,
      changedAt: Time,
      binnedAt: v.nullable(Time),
      versions: v.array(
        v.object({
          at: Time,
          why: v.picklist(VERSION_REASONS),
          pieces: v.array(v.string()),
          long: v.array(v.string()),
        }),
      ),
      plan: v.unknown(),
    }),
  ),
  pictures: v.record(v.string(), v.string()),
});
type Filed = v.InferOutput<typeof LibrarySchema>;

/** Returns the plans of the file, or all its problems. Never throws, never repairs. */
export function readLibraryFile(text: string): ReadLibraryFile {
  const json = readJson(text, AROUND);
  if (!json.ok) {
    const found = text.trim() === '' ? 'an empty file' : `${json.found} at line ${json.line}, column ${json.column}`;
    return refused([{ place: WHOLE, found, expected: json.expected }]);
  }
  const strange = headProblem(json.value);
  if (strange) return refused([strange]);
  const duplicateKeys = json.duplicateKeys.map((path) => ({
    place: pointerTo(path),
    found: 'the same key twice',
    expected: 'each key once',
  }));
  const library = v.safeParse(LibrarySchema, json.value);
  if (!library.success) return refused([...duplicateKeys, ...library.issues.map(issueProblem)]);
  const { plans, problems } = readPlans(library.output);
  const all = [...duplicateKeys, ...problems];
  return all.length === 0 ? { ok: true, plans } : refused(all);
}

/** Nesting depth of a plan in the file: file, list, entry. */
const AROUND = 3;

const WHOLE = 'the whole file';

function refused(problems: readonly FileProblem[]): ReadLibraryFile {
  return { ok: false, problems };
}

function headProblem(value: unknown): FileProblem | null {
  const { format, version } = (typeof value === 'object' && value !== null ? value : {}) as Record<string, unknown>;
  if (format !== FORMAT) return { place: '/format', found: foundWords(format), expected: `"${FORMAT}"` };
  if (version === VERSION) return null;
  const newer = typeof version === 'number' && version > VERSION;
  const expected = newer ? `${VERSION}; open the file with a newer Stillspot` : String(VERSION);
  return { place: '/version', found: foundWords(version), expected };
}

function issueProblem(issue: v.BaseIssue<unknown>): FileProblem {
  const path = (issue.path ?? []).map(({ key }) => key as Step);
  return {
    place: pointerTo(path) || WHOLE,
    found: foundWords(issue.input),
    expected: EXPECTED[issue.type] ?? issue.message,
  };
}

/** What is expected in the file, by kind of problem. */
const EXPECTED: Readonly<Record<string, string>> = {
  array: 'a list',
  string: 'a text',
  object: 'an object',
  record: 'pictures by name',
  number: 'a time in ms since 1970',
  min_value: 'a time in ms since 1970',
  finite: 'a time in ms since 1970',
  picklist: `one of ${VERSION_REASONS.join(', ')}`,
};

function readPlans({ plans, pictures }: Filed): { plans: readonly ReadPlan[]; problems: readonly FileProblem[] } {
  const problems: FileProblem[] = [];
  const ids = new Set<string>();
  const longTexts = new Map(Object.entries(pictures));
  const read = plans.flatMap(({ plan: value, versions, ...filed }, index): readonly ReadPlan[] => {
    const place = `/plans/${index}`;
    if (ids.has(filed.id))
      problems.push({ place: `${place}/id`, found: `"${filed.id}" twice`, expected: 'each plan once' });
    ids.add(filed.id);
    const earlier = readVersions(versions, longTexts, place, problems);
    const plan = parsePlan(JSON.stringify(value) ?? '');
    if (!plan.ok) problems.push(...plan.problems.map((each) => planProblem(each, `${place}/plan`)));
    return plan.ok ? [{ ...filed, versions: earlier, plan: plan.plan, text: writePlan(plan.plan) }] : [];
  });
  return { plans: read, problems };
}

/** Returns the valid versions of a plan; adds the others to `problems`. */
function readVersions(
  versions: Filed['plans'][number]['versions'],
  longTexts: ReadonlyMap<string, string>,
  plan: string,
  problems: FileProblem[],
): readonly FiledVersion[] {
  return versions.flatMap(({ at, why, ...split }, index) => {
    const place = `${plan}/versions/${index}`;
    const missing = split.long.find((name) => !longTexts.has(name));
    const text = split.pieces.length === split.long.length + 1 ? joinText(split, longTexts) : null;
    if (missing !== undefined) {
      problems.push({ place: `${place}/long`, found: `"${missing}"`, expected: 'a name under "pictures"' });
    } else if (text === null) {
      const expected = `${split.long.length + 1} of them: one more than there are names`;
      problems.push({ place: `${place}/pieces`, found: `a list of ${split.pieces.length}`, expected });
    } else {
      const read = parsePlan(text);
      if (read.ok) return [{ at, why, text }];
      problems.push(...read.problems.map((each) => planProblem(each, `${place}, in its plan at `)));
    }
    return [];
  });
}

function planProblem({ pointer, found, expected }: PlanProblem, place: string): FileProblem {
  return { place: place + (pointer || (place.endsWith(' ') ? 'the whole of it' : '')), found, expected };
}

/** Hashes of a plan and of its versions. */
export function hashesOf({ text, versions }: FiledPlan): {
  readonly hash: string;
  readonly earlier: ReadonlySet<string>;
} {
  return { hash: textHash(text), earlier: new Set(versions.map((version) => textHash(version.text))) };
}
