import type { Override, Protocol } from '../../plan/model.ts';
import type { Kit, Visit } from '../../plan/test-record.ts';
import { isOverridable, profileById, publishedDistance } from '../../rules/profiles.ts';
import { RULE_IDS } from '../../rules/types.ts';
import { formatLength, type LengthUnit } from '../../units/index.ts';
import { instantMs, instantTrouble } from '../instant.ts';
import { foundWords, quoted } from '../problem.ts';
import { INSTANT_WORDS } from '../schema/leaves.ts';
import type { Flaw } from './flaw.ts';

/** A time zone that the system's own database knows. Signed offsets are refused: only some systems know them. */
export function zoneFlaws(timeZone: string): readonly Flaw[] {
  if (/^[A-Za-z]/.test(timeZone) && isZone(timeZone)) return [];
  return [
    {
      path: ['timeZone'],
      found: quoted(timeZone),
      expected: 'the name of a time zone, like America/New_York',
      says: `has the time zone ${quoted(timeZone)}, which is not known here. Write one like America/New_York.`,
    },
  ];
}

function isZone(timeZone: string): boolean {
  try {
    new Intl.DateTimeFormat('en-US', { timeZone });
    return true;
  } catch {
    return false;
  }
}

/** An instant that the calendar does not have; null is none. `key` is where it stands. */
export function instantFlaws(text: string | null, key: string): readonly Flaw[] {
  const trouble = text === null ? null : instantTrouble(text);
  if (text === null || trouble === null) return [];
  return [
    {
      path: [key],
      found: quoted(text),
      expected: INSTANT_WORDS,
      says: `has "${key}" as ${quoted(text)}, which ${trouble}.`,
    },
  ];
}

/** Every instant of a visit. */
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

/** Each instant for itself, and an end that is not after the start. */
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
      says: `ends at ${visit.end}, not after its start at ${visit.start}. Look at both and at their offsets.`,
    },
  ];
}

/** A least time that is longer than the greatest. */
export function kitFlaws({ minimumHours, maximumHours }: Kit): readonly Flaw[] {
  if (minimumHours <= maximumHours) return [];
  return [
    {
      path: ['maximumHours'],
      found: String(maximumHours),
      expected: `at least minimumHours, ${minimumHours}`,
      says: `may stay for at most ${maximumHours} hours and must stay for at least ${minimumHours}. Look at the kit's instructions.`,
    },
  ];
}

/** A profile that is not known here. */
export function profileFlaws({ profile }: Protocol): readonly Flaw[] {
  if (profileById(profile)) return [];
  const expected = 'a profile that this Stillspot knows';
  return [
    {
      path: ['profile'],
      found: quoted(profile),
      expected,
      says: `has the profile ${quoted(profile)}, which this Stillspot does not know.`,
    },
  ];
}

/** A rule that does not exist, named under a key of a level; `path` leads from the level to the name. */
export function ruleFlaws(rule: string, path: Flaw['path']): readonly Flaw[] {
  const known: readonly string[] = RULE_IDS;
  if (known.includes(rule)) return [];
  const says = `names the rule ${quoted(rule)} under "${path[0]}"; there is no such rule.`;
  return [{ path, found: quoted(rule), expected: 'the id of a rule', says }];
}

/**
 * What is wrong with one override: a rule that is not known, has no single least distance or is not in the profile, or a
 * looser distance without a note. `earlier` are the overrides before it. The profile is known.
 */
export function overrideFlaws(
  override: Override,
  earlier: readonly Override[],
  profileId: string,
  unit: LengthUnit,
): readonly Flaw[] {
  const { rule, distance, note } = override;
  const name = quoted(rule);
  const flaw = (says: string, expected: string): readonly Flaw[] => [{ path: ['rule'], found: name, expected, says }];
  const known: readonly string[] = RULE_IDS;
  if (!known.includes(rule)) return flaw(`names the rule ${name}, which does not exist.`, 'the id of a rule');
  const row = profileById(profileId)?.rules.find(({ id }) => id === rule);
  if (!row)
    return flaw(`names the rule ${name}, which the profile does not have. Take it out.`, 'a rule of the profile');
  if (!isOverridable(row)) {
    return flaw(
      `names the rule ${name}, which has no single least distance to replace.`,
      'a rule with one least distance',
    );
  }
  if (earlier.some((other) => other.rule === rule)) {
    return flaw(
      `names the rule ${name}, which has an override already. Keep one of the two.`,
      'a rule without an override',
    );
  }
  const published = publishedDistance(profileId, rule);
  if (published === null || distance >= published || note.trim() !== '') return [];
  const [own, theirs] = [formatLength(distance, unit, 'down'), formatLength(published, unit, 'up')];
  const says = `loosens the rule ${name} from ${theirs} to ${own} without a note. Say why in the note.`;
  return [{ path: ['note'], found: quoted(note), expected: 'a note that says why the rule is loosened', says }];
}
