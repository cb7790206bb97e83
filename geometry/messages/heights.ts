import type { Level, Mm, Plan } from '../plan/model.ts';
import { ruleOf } from '../rules/profiles.ts';
import type { HeightInterval, HeightReason } from '../search/heights.ts';
import { formatLength, type Rounding } from '../units/index.ts';
import { subjectName } from './subject.ts';

type PlanContext = Pick<Plan, 'display' | 'protocol'>;

/** An interval of allowed base heights: its ends in words, and why it ends there. */
export interface HeightTexts {
  /** Null if the interval is a single height. */
  readonly highest: string | null;
  readonly lowest: string;
  readonly above: string;
  readonly below: string;
}

/**
 * Returns the interval rounded inward: the lowest height up, the highest down. A very short interval is rounded to the
 * nearest height.
 */
export function describeHeights(
  { from, to, above, below }: HeightInterval,
  plan: PlanContext,
  level: Level,
): HeightTexts {
  const [low, high] = [length(plan, from, 'up'), length(plan, to, 'down')];
  const fine = to - from < FINE;
  return {
    highest: fine ? null : high,
    lowest: fine ? length(plan, from, 'nearest') : low,
    above: heightReason(above, 'above', plan, level),
    below: heightReason(below, 'below', plan, level),
  };
}

/** A shorter interval is one height, mm: twice the rounding step of lengths. */
const FINE: Mm = 10;

/** Returns why a detector may not be higher (`above`) or lower (`below`), for the middle of a sentence. */
function heightReason({ kind, rule, subject }: HeightReason, end: 'above' | 'below', plan: PlanContext, level: Level) {
  const name = subject === null ? '' : subjectName(level, subject, null, rule !== 'object');
  const { least, most } = rule ? ruleOf(plan.protocol, rule) : { least: null, most: null };
  switch (kind) {
    case 'floor':
      return 'it stands on the floor';
    case 'band':
      return end === 'below'
        ? `height above the floor, ${length(plan, least ?? 0, 'up')} at the least`
        : `height above the floor, its top at ${length(plan, most ?? 0, 'down')} at the most`;
    case 'ceiling':
      return rule ? `${length(plan, least ?? 0, 'up')} below the ceiling` : 'its top touches the ceiling';
    case 'surface':
      return `it stands on ${name}`;
    case 'beside':
      return `clear over the top of ${name}`;
    case 'sun':
      return `away from the sun through ${name}`;
    case 'above':
      return `${length(plan, least ?? 0, 'up')} clear of ${name} above it`;
  }
}

function length(plan: PlanContext, mm: Mm, round: Rounding): string {
  return formatLength(mm, plan.display.length, round);
}
