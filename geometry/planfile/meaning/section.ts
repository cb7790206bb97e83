import type { Override, Protocol } from '../../plan/model.ts';
import { counted } from '../../plan/nouns.ts';
import type { Kit, Visit } from '../../plan/test-record.ts';
import { isOverridable, needsNote, profileById } from '../../rules/profiles.ts';
import { RULE_IDS } from '../../rules/types.ts';
import { formatLength, type LengthUnit } from '../../units/index.ts';
import { instantError, instantMs } from '../instant.ts';
import { type Flaw, foundWords, quoted } from '../problem.ts';
import { INSTANT_WORDS } from '../schema/leaves.ts';

/**
 * Returns the flaw of a time zone that the system does not know. Signed offsets are refused because not every system
 * accepts them.
 */
export function timeZoneFlaws(timeZone: string): readonly Flaw[] {
  if (/^[A-Za-z]/.test(timeZone) && isZone(timeZone)) return [];
  return [
    {
      path: ['timeZone'],
      found: quoted(timeZone),
      expected: 'the name of a time zone, like America/New_York',
      statement: `has the time zone ${quoted(timeZone)}, which is not known here. Write one like America/New_York.`,
    },
  ];
}

/** Zones that the system knows, cached because creating a format is slow and a file is read many times. */
const knownZones = new Set<string>();

function isZone(timeZone: string): boolean {
  if (knownZones.has(timeZone)) return true;
  try {
    new Intl.DateTimeFormat('en-US', { timeZone });
    knownZones.add(timeZone);
    return true;
  } catch {
    return false;
  }
}

/** The years that an instant of a test may be in: a year outside is a typing error, and would make timelines endless. */
export const TEST_YEARS = { first: 1990, last: 2100 } as const;

/** Returns whether an instant, ms since the epoch, is in those years in UTC. */
export const isInTestYears = (ms: number): boolean =>
  ms >= Date.UTC(TEST_YEARS.first, 0) && ms < Date.UTC(TEST_YEARS.last + 1, 0);

/** Returns why a text is not a valid instant of a test, in words; null when it is. */
function testInstantError(text: string): string | null {
  const ms = instantMs(text);
  if (ms === null) return instantError(text);
  return isInTestYears(ms) ? null : `is not in the years ${TEST_YEARS.first} to ${TEST_YEARS.last}`;
}

/**
 * Returns the flaw of an instant that is not in the calendar or not in the years of tests; null has no flaw. `key` is its key.
 */
export function instantFlaws(text: string | null, key: string): readonly Flaw[] {
  const error = text === null ? null : testInstantError(text);
  if (text === null || error === null) return [];
  return [
    {
      path: [key],
      found: quoted(text),
      expected: INSTANT_WORDS,
      statement: `has "${key}" as ${quoted(text)}, which ${error}.`,
    },
  ];
}

/** The keys of a visit that hold instants. */
export const VISIT_INSTANTS = [
  'closedSince',
  'mitigationOnSince',
  'start',
  'end',
  'plannedEnd',
  'closedUntil',
  'posted',
  'received',
] as const satisfies readonly (keyof Visit)[];

/** Checks each instant, and that the end is after the start. */
export function visitFlaws(visit: Visit): readonly Flaw[] {
  const flaws = VISIT_INSTANTS.flatMap((key) => instantFlaws(visit[key] ?? null, key));
  const start = visit.start === null ? null : instantMs(visit.start);
  const end = visit.end === null ? null : instantMs(visit.end);
  if (start === null || end === null || end > start) return flaws;
  return [
    ...flaws,
    {
      path: ['end'],
      found: foundWords(visit.end),
      expected: `an instant after the start, ${visit.start}`,
      statement: `ends at ${visit.end}, not after its start at ${visit.start}. Check both and their offsets.`,
    },
  ];
}

/** Returns the flaw of a kit whose least exposure time exceeds the greatest. */
export function kitFlaws({ minimumHours, maximumHours }: Kit): readonly Flaw[] {
  if (minimumHours <= maximumHours) return [];
  return [
    {
      path: ['maximumHours'],
      found: String(maximumHours),
      expected: `at least minimumHours, ${minimumHours}`,
      statement: `may stay for at most ${counted(maximumHours, 'hour')} and must stay for at least ${minimumHours}. Check the kit's instructions.`,
    },
  ];
}

/** Returns the flaw of a profile that does not exist. */
export function profileFlaws({ profile }: Protocol): readonly Flaw[] {
  if (profileById(profile)) return [];
  const expected = 'a profile that this Stillspot knows';
  return [
    {
      path: ['profile'],
      found: quoted(profile),
      expected,
      statement: `has the profile ${quoted(profile)}, which this Stillspot does not know.`,
    },
  ];
}

/** Returns the flaw of a rule that does not exist, named under a key of a level; `path` leads from the level to the name. */
export function ruleFlaws(rule: string, path: Flaw['path']): readonly Flaw[] {
  const ruleIds: readonly string[] = RULE_IDS;
  if (ruleIds.includes(rule)) return [];
  const statement = `names the rule ${quoted(rule)} under "${path[0]}"; there is no such rule.`;
  return [{ path, found: quoted(rule), expected: 'the id of a rule', statement }];
}

/**
 * Returns what is wrong with one override: a rule that does not exist, has no single minimum distance or is not in
 * the profile; or a looser distance without a note. `earlier` are the rules of the overrides before it. The profile exists.
 */
export function overrideFlaws(
  override: Override,
  earlier: ReadonlySet<string>,
  profileId: string,
  unit: LengthUnit,
): readonly Flaw[] {
  const { rule, distance, note } = override;
  const name = quoted(rule);
  const flaw = (statement: string, expected: string): readonly Flaw[] => [
    { path: ['rule'], found: name, expected, statement },
  ];
  const ruleIds: readonly string[] = RULE_IDS;
  if (!ruleIds.includes(rule)) return flaw(`names the rule ${name}, which does not exist.`, 'the id of a rule');
  const row = profileById(profileId)?.rules.find(({ id }) => id === rule);
  if (!row)
    return flaw(`names the rule ${name}, which the profile does not have. Take it out.`, 'a rule of the profile');
  if (!isOverridable(row)) {
    return flaw(
      `names the rule ${name}, which has no single least distance to replace.`,
      'a rule with one least distance',
    );
  }
  if (earlier.has(rule)) {
    return flaw(
      `names the rule ${name}, which has an override already. Keep one of the two.`,
      'a rule without an override',
    );
  }
  const published = row.least;
  if (!needsNote(published, distance) || note.trim() !== '') return [];
  const missing = (expected: string, statement: string): readonly Flaw[] => [
    { path: ['note'], found: quoted(note), expected, statement },
  ];
  const own = formatLength(distance, unit, 'down');
  if (published === null)
    return missing(
      'a note that says who set the distance',
      `sets the rule ${name}, whose text gives no figure, to ${own} without a note. Enter who set it in the note.`,
    );
  const theirs = formatLength(published, unit, 'up');
  return missing(
    'a note that says why the rule is loosened',
    `loosens the rule ${name} from ${theirs} to ${own} without a note. Enter why in the note.`,
  );
}
