import { nextId } from '../../geometry/plan/edit.ts';
import type { Detector, Level, Plan } from '../../geometry/plan/model.ts';
import { buildLevel } from '../engine.ts';
import { nextLabel } from './plan-slice.ts';
import { selectLevel } from './selectors.ts';
import { useAppStore } from './store.ts';
import { spotBeside } from './ways-out.ts';

/**
 * Sets a second detector beside this one, marks both as a pair, and selects the new one: one step of history. Answers why not,
 * or empty.
 */
export function setCompanion(detectorId: string): string {
  const state = useAppStore.getState();
  const level = selectLevel(state);
  const detector = level.detectors.find(({ id }) => id === detectorId);
  if (!detector) return '';
  const pair = detector.pair ?? freePair(level);
  const id = nextId(state.plan, 'd');
  const paired = withPair(level, detector, { ...detector, id, label: nextLabel(level) }, pair);
  const whole = withLevelIn(state.plan, paired);
  const [first, second] = [detectorId, id].map((each) => paired.detectors.find((one) => one.id === each));
  const spot = first && second && spotBeside(whole, buildLevel(paired), second, first);
  if (!spot) return 'The list of rules that is kept has no distance for a pair. Set the second one by hand.';
  const refusal = state.run(() =>
    withLevelIn(whole, {
      ...paired,
      detectors: paired.detectors.map((each) => (each.id === id ? { ...each, at: spot.at } : each)),
    }),
  );
  if (!refusal) state.select([id]);
  return refusal;
}

function withPair(level: Level, detector: Detector, second: Detector, pair: string): Level {
  const marked = level.detectors.map((each) => (each.id === detector.id ? { ...each, pair } : each));
  return { ...level, detectors: [...marked, { ...second, pair }] };
}

function withLevelIn(plan: Plan, level: Level): Plan {
  return { ...plan, levels: plan.levels.map((each) => (each.id === level.id ? level : each)) };
}

/** The first capital letter that marks no pair yet; numbers after Z. */
function freePair(level: Level): string {
  const taken = new Set(level.detectors.map(({ pair }) => pair));
  for (let code = 65; code <= 90; code++) {
    const letter = String.fromCharCode(code);
    if (!taken.has(letter)) return letter;
  }
  let number = 1;
  while (taken.has(String(number))) number += 1;
  return String(number);
}
