import type { Plan } from '../plan/model.ts';
import { listed } from '../plan/nouns.ts';
import { describeUnknownKeys } from './unknown-keys.ts';

/**
 * The size of plan that Stillspot is made and measured for: a level of that size can be edited without delay. Larger plans are read and
 * checked too, but more slowly.
 */
export const PLAN_LIMITS = {
  /** Doors, windows, passages, fixtures, objects and detectors. */
  features: 5000,
  rooms: 300,
  walls: 10_000,
} as const;

/** Returns a sentence about what in a plan exceeds the limits, with the limits; "" if nothing does. */
export function describeLimits({ levels }: Plan): string {
  const count = (of: (level: Plan['levels'][number]) => number) => levels.reduce((sum, level) => sum + of(level), 0);
  const counts = {
    features: count(
      ({ openings, fixtures, objects, detectors }) =>
        openings.length + fixtures.length + objects.length + detectors.length,
    ),
    rooms: count(({ rooms }) => rooms.length),
    walls: count(({ walls }) => walls.length),
  };
  const beyond = Object.entries(PLAN_LIMITS).flatMap(([what, most]) => {
    const found = counts[what as keyof typeof PLAN_LIMITS];
    return found > most ? [{ has: `${number(found)} ${WORDS[what]}`, limit: `${number(most)} ${WORDS[what]}` }] : [];
  });
  if (beyond.length === 0) return '';
  const [has, limits] = [listed(beyond.map((one) => one.has)), listed(beyond.map((one) => one.limit))];
  return `The plan has ${has}. Stillspot is made for at most ${limits}: everything works, but slower.`;
}

const WORDS: Readonly<Record<string, string>> = {
  features: 'doors, windows and things',
  rooms: 'rooms',
  walls: 'walls',
};

const number = (count: number): string => count.toLocaleString('en-US');

/** Returns notes on a plan that was read: unknown keys, sizes beyond the limits. "" for none. */
export function describeFile(plan: Plan): string {
  return [describeUnknownKeys(plan), describeLimits(plan)].filter(Boolean).join(' ');
}
