import { nextId } from '../../geometry/edit/index.ts';
import { uncheckedLevelEdit } from '../../geometry/edit/level.ts';
import { uncheckedItemAdded, uncheckedItemPatched } from '../../geometry/edit/listed-items.ts';
import type { Detector, Level, Mm, Plan, XY } from '../../geometry/plan/model.ts';
import { effectiveRules } from '../../geometry/rules/profiles.ts';
import { companionGap } from '../../geometry/search/group-shapes.ts';
import { formatRequired } from '../../geometry/units/index.ts';
import { nextLabel } from './place-detector.ts';

/** Places and sizes of detectors that are placed at once, mm. */
export interface Setting {
  readonly axes: readonly XY[];
  readonly base: Mm;
  readonly radius: Mm;
  readonly tall: Mm;
  /** Whether each keeps the gap of a pair to every other; else only to its neighbors in a row. */
  readonly mutual: boolean;
}

export interface WithDetectors {
  readonly plan: Plan;
  readonly added: readonly Detector[];
}

/**
 * Returns the plan with detectors added to a level, with new ids and labels. Detectors side by side are marked as one pair, together with
 * `first` if there is one. Detectors in a row are paired two by two, so that none is checked against one that it need not be beside; an odd
 * last one is single.
 */
export function withDetectors(plan: Plan, levelId: string, setting: Setting, first: Detector | null): WithDetectors {
  const { axes, base, radius, tall } = setting;
  const pairs = pairsFor(levelOf(plan, levelId), setting, first);
  const before = first ? 1 : 0;
  let grown = first ? uncheckedItemPatched(plan, levelId, first.id, { pair: pairs[0] ?? null }) : plan;
  const added = axes.map((at, index): Detector => {
    const pair = pairs[index + before] ?? null;
    const one = { id: nextId(grown, 'd'), label: nextLabel(grown), at, base, radius, tall, pair };
    grown = uncheckedItemAdded(grown, levelId, 'detectors', one);
    return one;
  });
  return { plan: grown, added };
}

/** Returns the plan with detectors of one pair moved to other places, in the order of `ids`. */
export function withGroupMoved(plan: Plan, levelId: string, ids: readonly string[], { axes, base }: Setting): Plan {
  return uncheckedLevelEdit(plan, levelId, (level) => ({
    ...level,
    detectors: level.detectors.map((detector) => {
      const at = axes[ids.indexOf(detector.id)];
      return at ? { ...detector, at, base } : detector;
    }),
  }));
}

/** The text that marks the pair of each detector, `first` before the others; null for a single one. */
function pairsFor(level: Level | null, { axes, mutual }: Setting, first: Detector | null): readonly (string | null)[] {
  const count = axes.length + (first ? 1 : 0);
  if (count === 1) return [null];
  const letters = freePairs(level, count, first?.pair ?? null);
  return Array.from({ length: count }, (_, index) => {
    if (mutual) return letters[0] ?? null;
    const single = index === count - 1 && index % 2 === 0;
    return single ? null : (letters[Math.floor(index / 2)] ?? null);
  });
}

/** The first capital letters, then numbers, that mark no pair yet; `marked` comes before them. */
function freePairs(level: Level | null, count: number, marked: string | null): readonly string[] {
  const taken = new Set(level?.detectors.map(({ pair }) => pair));
  const letters = Array.from({ length: 26 }, (_, k) => String.fromCharCode(65 + k));
  const numbers = Array.from({ length: taken.size + count }, (_, k) => String(k + 1));
  const free = [...letters, ...numbers].filter((text) => !taken.has(text));
  return [...(marked === null ? [] : [marked]), ...free].slice(0, count);
}

function levelOf(plan: Plan, levelId: string): Level | null {
  return plan.levels.find(({ id }) => id === levelId) ?? null;
}

/**
 * Returns, in words, how far apart detectors are placed side by side, and whether the distance is from other protocols because the plan's
 * has none.
 */
export function gapWords(plan: Plan): string {
  const { least, most } = companionGap(plan);
  const unit = plan.display.length;
  const words = `${formatRequired(least, unit)} to ${formatRequired(most, unit, 'most')} from rim to rim`;
  const own = effectiveRules(plan.protocol).some(({ subject }) => subject.of === 'companion');
  return own
    ? `${words}.`
    : `${words}, as other protocols require: the protocol of this plan has no distance for a pair.`;
}
