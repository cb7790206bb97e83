/** A level, and what guidance says of it. */
import { checkDetector } from '../../../geometry/check/check-detector.ts';
import type { DetectorReport } from '../../../geometry/check/types.ts';
import { buildLevel } from '../../../geometry/level/build-level.ts';
import type { Detector, Level, Plan, RoomLabel, Wall, XY } from '../../../geometry/plan/model.ts';
import { emptyPlan } from '../../../geometry/planfile/empty.ts';
import type { Hint } from '../../../src/advice/guidance/hint.ts';
import { guidance } from '../../../src/advice/guidance.ts';
import type { Stage } from '../../../src/advice/stages.ts';
import { testStateOf } from '../../../src/state/test-state.ts';

export const wall = (id: string, from: XY, to: XY): Wall => ({ id, from, to, thickness: 200, side: 'auto' });
export const SQUARE: readonly Wall[] = [
  wall('w1', [0, 0], [8000, 0]),
  wall('w2', [8000, 0], [8000, 6000]),
  wall('w3', [8000, 6000], [0, 6000]),
  wall('w4', [0, 6000], [0, 0]),
];
export const DEN: RoomLabel = { id: 'r1', name: 'Den', use: 'den', at: [4000, 3000] };
export const detector = (id: string, label: string, pair: string | null, at: XY): Detector => ({
  id,
  label,
  at,
  base: 762,
  radius: 50.8,
  tall: 25.4,
  pair,
  support: 'stand',
});

export function hintsOf(stage: Stage, level: Level, part: Partial<Plan> = {}, reports?: readonly DetectorReport[]) {
  const plan: Plan = { ...emptyPlan(), levels: [level], ...part };
  const model = buildLevel(level);
  const evaluated = reports ?? level.detectors.map((each) => checkDetector(plan, model, each));
  const state = guidance(plan, [{ model, reports: evaluated }], testStateOf(plan), level.id).find(
    (each) => each.stage === stage,
  );
  if (!state) throw new Error(`no stage ${stage}`);
  return state;
}
export const texts = (hints: readonly Hint[]) => hints.map(({ text }) => text);
export const missing = (hints: readonly Hint[]) => texts(hints.filter((hint) => hint.missing));
