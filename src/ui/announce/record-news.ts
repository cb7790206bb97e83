import { counted } from '../../../geometry/messages/index.ts';
import type { Plan } from '../../../geometry/plan/model.ts';
import { CONDITION_ITEMS, recordedCondition } from '../../protocol/conditions/conditions-report.ts';
import { detectorLabel } from '../../protocol/detector-label.ts';
import { STATE_WORDS } from '../stages/house/state-words.ts';

/**
 * Returns what an edit changed in the record of the test, in words: answered conditions and photos. `whole` adds the values of fields: a
 * field itself announces its value when it is typed, but not when it is undone.
 */
export function describeRecordEdit(before: Plan, after: Plan, whole: boolean): string {
  const parts = [...conditionWords(before, after), ...photoWords(before, after)];
  return [...parts, ...(whole ? typedWords(before, after) : [])].join(', ');
}

function conditionWords(before: Plan, after: Plan): readonly string[] {
  if (before.conditions === after.conditions) return [];
  const stateIn = (plan: Plan, item: string) => recordedCondition(plan, item)?.state ?? 'unknown';
  return [...new Set([...after.conditions, ...before.conditions].map(({ item }) => item))]
    .filter((item) => stateIn(before, item) !== stateIn(after, item))
    .map((item) => `${conditionName(item)}: ${STATE_WORDS[stateIn(after, item)].toLowerCase()}`);
}

const conditionName = (id: string): string =>
  CONDITION_ITEMS.find((item) => item.id === id)?.name ?? id.replaceAll('-', ' ');

function photoWords(before: Plan, after: Plan): readonly string[] {
  const count = ({ log = [] }: Plan, detector: string) =>
    log.filter((entry) => entry.detector === detector).reduce((sum, { photos }) => sum + photos.length, 0);
  const named = [before, after].flatMap(({ log = [] }) => log.map(({ detector }) => detector));
  return [...new Set(named)].flatMap((id) => {
    const more = count(after, id) - count(before, id);
    const words = `${counted(Math.abs(more), 'photo')} of ${labelOf(after, id)}`;
    return more === 0 ? [] : [`${words} ${more > 0 ? 'added' : 'removed'}`];
  });
}

function labelOf({ levels }: Plan, id: string): string {
  const found = levels.flatMap(({ detectors }) => detectors).find((one) => one.id === id);
  return found ? detectorLabel(found) : 'a detector that is not on the plan';
}

/** Names of the other parts of a plan. */
const PARTS = {
  title: 'the title',
  display: 'the units',
  site: 'the property',
  protocol: 'the rules',
  tapeTolerance: 'the tolerance of the tape',
  kit: 'the kit',
  visit: 'the times of the visit',
  readings: 'the results',
  practice: 'the practice',
  log: 'the log',
  weather: 'the weather',
  agreement: 'the agreement',
  earlier: 'the earlier results',
  quality: 'the quality book',
} as const satisfies Partial<Record<keyof Plan, string>>;

function typedWords(before: Plan, after: Plan): readonly string[] {
  const photos = photoWords(before, after).length > 0;
  return Object.entries(PARTS)
    .filter(([key]) => before[key as keyof typeof PARTS] !== after[key as keyof typeof PARTS])
    .filter(([key]) => !(photos && key === 'log'))
    .map(([, name]) => `a change of ${name}`);
}
