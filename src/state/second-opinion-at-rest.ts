import { sunState } from '../../geometry/check/sun.ts';
import { describeComputed } from '../../geometry/messages/computed.ts';
import type { Level, Plan } from '../../geometry/plan/model.ts';
import { compareOpinions } from '../../geometry/recheck/compare.ts';
import type { SecondOpinion } from '../../geometry/recheck/recheck.ts';
import type { Opinion } from '../../geometry/recheck/types.ts';
import { recheckInWorker } from '../platform/worker/recheck-client.ts';
import { firstReportsOf } from './detector-reports.ts';
import { startSun, sunSettledFor } from './direct-sun.ts';
import { drawingKey } from './drawing-key.ts';
import { NO_DOUBTS, type Second } from './second-opinion.ts';
import { isGestureUnderWay, modelOf } from './selectors.ts';
import { useAppStore } from './store.ts';

/** Time without a change, ms, after which the second computation delays no input. */
const REST_MS = 350;

/** Starts to compute every verdict a second time whenever nothing has changed for `REST_MS`. */
export function startSecond(): void {
  let waiting: ReturnType<typeof setTimeout> | undefined;
  const look = () => {
    clearTimeout(waiting);
    if (isDue()) waiting = setTimeout(() => void recheckPlan(), REST_MS);
  };
  useAppStore.subscribe((now, before) => {
    if (
      now.plan !== before.plan ||
      now.previewPlan !== before.previewPlan ||
      now.draggedDetector !== before.draggedDetector
    )
      look();
  });
  look();
}

function isDue(): boolean {
  const state = useAppStore.getState();
  const { plan, second } = state;
  const isKnown = second !== null && sameForChecks(second.plan, plan);
  return !isGestureUnderWay(state) && !isKnown && plan.levels.some((one) => one.detectors.length > 0);
}

async function recheckPlan(): Promise<void> {
  if (!isDue()) return;
  const { plan } = useAppStore.getState();
  const second = await opinionsOf(plan);
  // A change of the plan meanwhile has scheduled another computation.
  const { plan: now, setSecond } = useAppStore.getState();
  if (now === plan) setSecond(second);
}

/** Resolves to the comparison of both computations of a plan. For exported files, which must not be written without it. */
export async function opinionsOf(plan: Plan): Promise<Second> {
  const { second } = useAppStore.getState();
  if (second && sameForChecks(second.plan, plan)) return second;
  const opinion = await recheckInWorker(plan);
  return secondOf(plan, await settledOpinion(plan), opinion);
}

/** Compares the second computation with the first. */
function secondOf(plan: Plan, first: Opinion, second: SecondOpinion): Second {
  const compared = compareOpinions(first, second, plan.tapeTolerance).flatMap(({ detectors }) => detectors);
  const differing = compared.filter(({ computed }) => computed.how === 'differs');
  const doubts = new Map(
    differing.map(({ id, computed }) => [id, { ...computed, says: describeComputed(computed, plan) }] as const),
  );
  return {
    plan,
    computed: new Map(compared.map(({ id, computed }) => [id, computed])),
    doubts: doubts.size > 0 ? doubts : NO_DOUBTS,
  };
}

/** Resolves to the results of the first computation once direct sun is computed for all of them. */
async function settledOpinion(plan: Plan): Promise<Opinion> {
  startSun();
  await sunSettledFor(() => {
    for (const level of plan.levels) for (const detector of level.detectors) sunState(plan, modelOf(level), detector);
  });
  return firstOpinion(plan);
}

/** Returns whether no verdict of the two plans can differ: they differ at most in words, times and pictures. */
export function sameForChecks(one: Plan, two: Plan): boolean {
  const same = (['protocol', 'site', 'visit', 'conditions', 'tapeTolerance'] as const).every(
    (key) => one[key] === two[key],
  );
  return (
    same && one.levels.length === two.levels.length && one.levels.every((level, i) => sameDrawing(level, two.levels[i]))
  );
}

const sameDrawing = (one: Level, two: Level | undefined) => two !== undefined && drawingKey(one) === drawingKey(two);

/** Returns the results of the first computation for all levels of a plan. */
const firstOpinion = (plan: Plan): Opinion => ({
  levels: plan.levels.map((level) => ({ id: level.id, detectors: firstReportsOf(plan, modelOf(level)) })),
});
